/** . : closing the case with everything that is still open on view, and reopening a closed one. */
import { openAt } from "../../figures/checks.ts";
import { closingFigures } from "../../figures/closing-figures.ts";
import { completenessOf } from "../../figures/completeness.ts";
import { reconciliation } from "../../figures/reconciliation.ts";
import { isOn, type Run } from "../../figures/run.ts";
import { clockTimeOf } from "../../format/instant.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import { harmless } from "../../format/text.ts";
import { spanName } from "../../protocol/names.ts";
import type { Draft } from "../../record/entry.ts";
import { ofKind } from "../../record/standing.ts";
import type { Context, EntryStroke } from "../stroke.ts";
import { readInitials } from "./handover.ts";

/** What is to be looked at before the case is closed; nothing in it keeps anybody from closing. */
function closingList(run: Run): readonly string[] {
  const { course } = run;
  const stillOn = [...course.spans.keys()]
    .filter((what) => isOn(course, what))
    .map((what) => `still on: ${spanName(what, course.protocol)}`);
  const checks = openAt(course.protocol, course.record.facts, "closing").map(
    ({ list, open }) => `checklist ${list.name}: ${open} of ${list.items.length} open (c ${list.letter})`,
  );
  const incidents = ofKind(course.record.facts, "incident").map(
    ({ entry }) => `incident ${clockTimeOf(entry.at)} ${harmless(entry.text)}`,
  );
  const list = completenessOf(run);
  const missing = list
    .filter(({ state }) => state === "missing")
    .map(({ item, standard }) => `missing: ${item} (${standard})`);
  const present = list.filter(({ state }) => state === "present").length;
  return [
    ...stillOn,
    ...checks,
    ...(incidents.length > 0 ? incidents : ["incidents: none recorded (e writes one)"]),
    ...reconciliation(run),
    `record: ${present} items present, ${missing.length} missing, ${list.length - present - missing.length} not applicable`,
    ...missing,
  ];
}

function readClosing(words: readonly string[], run: Run): Outcome<Draft> {
  const initials = readInitials(words[0], "the person who signs");
  if (!initials.ok) return initials;
  if (words.length > 1) return refused("Type the initials alone; a note goes behind a semicolon.");
  const completeness = completenessOf(run).map(({ item, state, standard }) => ({ item, state, standard }));
  return taken({ kind: "closed", operator: initials.value, completeness, figures: closingFigures(run) });
}

function readReopening([first, ...reason]: readonly string[]): Outcome<Draft> {
  const initials = readInitials(first, "the person who reopens it");
  if (!initials.ok) return initials;
  if (reason.length === 0) return refused("Why is it reopened? Type the initials and then the reason.");
  return taken({ kind: "reopened", operator: initials.value, reason: reason.join(" ") });
}

const isClosed = ({ run }: Context) => run.course.closedAt !== null;

export const closing: EntryStroke = {
  key: ".",
  id: "closing",
  short: "close",
  name: "close the case",
  opens: "line",
  takes:
    "initials of the person who signs; shows what is open or missing · in a closed case: initials and a reason reopen it",
  likely: ["after"],
  example: ". KM",
  reopens: true,
  asks: (context) =>
    isClosed(context)
      ? "initials and a reason reopen the case"
      : "initials sign and close the case; arrows scroll the list",
  shows: (context) => (isClosed(context) ? [] : closingList(context.run)),
  read: ({ words }, context) => (isClosed(context) ? readReopening(words) : readClosing(words, context.run)),
};

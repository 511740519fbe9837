/** The history of an entry as rows: what was written, each correction with by, when and why, and what stands. */
import type { History, Said, Step } from "../console/review-history.ts";
import { clockTimeOf, dayOf } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import type { Entry } from "../record/entry.ts";
import { wrapped } from "./wrapped.ts";

type HistoryRow = { readonly text: string; readonly isTitle: boolean };

/** The rows, none wider than `width`. */
export function historyRows({ fact, written, steps, stands }: History, width: number): readonly HistoryRow[] {
  const { logged } = fact;
  return [
    title(`as written  ${writtenBy(logged)}`),
    ...body(saidText(written), width),
    ...(logged.typed === "" ? [] : body(`typed: ${harmless(logged.typed)}`, width)),
    ...(logged.note === undefined ? [] : body(`note: ${harmless(logged.note)}`, width)),
    ...steps.flatMap((step) => stepRows(step, width)),
    title(steps.length === 0 ? "never put right" : "stands"),
    ...(steps.length === 0 ? [] : body(stands === null ? "struck out" : saidText(stands), width)),
  ];
}

function stepRows({ correction, depth, inForce, said, reason }: Step, width: number): HistoryRow[] {
  const what = correction.kind === "void" ? "struck out" : "put right";
  const whose = depth === 0 ? what : `#${correction.target.slice(1)} ${what}`;
  const force = inForce ? "" : ", not in force";
  return [
    title(`${whose}${force}  #${correction.seq} ${writtenBy(correction)}`),
    ...(said === null ? [] : body(`to: ${saidText(said)}`, width)),
    ...body(reason === "" ? "no reason was typed" : `because: ${harmless(reason)}`, width),
  ];
}

const title = (text: string): HistoryRow => ({ text, isTitle: true });

const body = (text: string, width: number): HistoryRow[] =>
  wrapped(text, width - 3).map((row) => ({ text: `   ${row}`, isTitle: false }));

const writtenBy = ({ by, loggedAt }: Entry): string =>
  `by ${harmless(by) || "–"} on ${dayOf(loggedAt)} at ${clockTimeOf(loggedAt)}`;

const saidText = ({ at, subject, says }: Said): string => `${clockTimeOf(at)} ${subject} ${says}`;

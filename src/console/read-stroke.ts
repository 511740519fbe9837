/** One stroke and its line, read against the record as it stands: what Enter would write. */

import { readRun } from "../figures/run.ts";
import type { Instant } from "../format/instant.ts";
import { andThen, type Outcome, refused, taken } from "../format/outcome.ts";
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import type { Draft } from "../record/entry.ts";
import { type Fact, standing } from "../record/standing.ts";
import { closedFault } from "./closed.ts";
import { type Line, readLine } from "./line.ts";
import { canBePutRight, pickedBy, readCorrection } from "./put-right.ts";
import { checkMeant } from "./read-check.ts";
import { formContext, formMeans, textsOf, writable } from "./read-form.ts";
import type { EntryStroke, FormStroke } from "./stroke.ts";
import { strokeFor } from "./strokes/table.ts";
import { MOST_TYPED } from "./typing.ts";
import { withEntries, withEntry } from "./write.ts";

export type Meant = { readonly draft: Draft; readonly at: Instant; readonly note: string | null };

/** What an entry stroke's line means; `started` is the time of the first key. */
export function meantBy(stroke: EntryStroke, text: string, file: CaseFile, started: Instant): Outcome<Meant> {
  const closed = stroke.reopens ? null : closedFault(file);
  if (closed) return refused(closed);
  const meant = andThen(readLine(text, started), (line): Outcome<Meant> => {
    const at = line.at ?? started;
    const read = stroke.read(line, { run: readRun(file, started.ms), at });
    return andThen(andThen(read, writable), (draft) => taken({ draft, at, note: line.note }));
  });
  return harmlesslyRefused(meant);
}

/** What a put-right line means for the entry that is picked. */
export function correctionMeantBy(
  target: string,
  text: string,
  file: CaseFile,
  started: Instant,
): Outcome<Meant> {
  const closed = closedFault(file);
  if (closed) return refused(closed);
  const meant = andThen(readLine(text, started), (line: Line): Outcome<Meant> => {
    const fact = factPicked(pickedBy(line.words).id ?? target, file);
    if (!fact)
      return refused("There is no such entry: pick one with the arrows, or by its number such as #12.");
    const read = readCorrection(fact, line, { run: readRun(file, started.ms), at: line.at ?? started });
    return andThen(read, (draft) => taken({ draft, at: started, note: line.note }));
  });
  return harmlesslyRefused(meant);
}

/** A refusal quotes what was typed, which may hold what a terminal would obey. */
const harmlesslyRefused = <T>(outcome: Outcome<T>): Outcome<T> =>
  outcome.ok ? outcome : refused(harmless(outcome.fault));

const factPicked = (id: string, file: CaseFile): Fact | undefined =>
  standing(file.entries).written.find(({ entry }) => entry.id === id);

/** The entry `z` picks first: the last that can be put right and is not struck out. */
export const lastToPutRight = (file: CaseFile): string | undefined =>
  standing(file.entries).written.findLast(({ entry, struck }) => !struck && canBePutRight(entry))?.entry.id;

/** A whole stroke typed as one text, `d 300 r @10:42`, written into the case. */
export function logged(file: CaseFile, typed: string, now: Instant): Outcome<CaseFile> {
  const [key = "", ...rest] = typed.trim();
  const text = rest.join("").trim();
  const stroke = strokeFor(key, file.protocol);
  if (rest.length > MOST_TYPED)
    return refused(`That is more than a line holds: type ${MOST_TYPED} characters at the most.`);
  if (!stroke)
    return refused(
      key === ""
        ? "no stroke was typed: begin with a stroke's key."
        : `"${harmless(key)}" is not a stroke's key: pumpside keys lists them.`,
    );
  if (stroke.opens === "form") return loggedForm(file, stroke, typed, text, now);
  if (stroke.opens === "checklists")
    return andThen(harmlesslyRefused(checkMeant(text, file)), (draft) =>
      taken(withEntry(file, draft, { at: now, now, typed: typed.trim() })),
    );
  if (stroke.opens !== "line" && stroke.opens !== "put-right") {
    return refused(
      `${stroke.key} (${stroke.name}) writes no entry: pumpside keys lists the strokes that do.`,
    );
  }
  const target = lastToPutRight(file) ?? "";
  const meant =
    stroke.opens === "line" ? meantBy(stroke, text, file, now) : correctionMeantBy(target, text, file, now);
  return andThen(meant, ({ draft, at, note }) =>
    taken(withEntry(file, draft, { at, now, typed: typed.trim(), note })),
  );
}

/** A form typed as one line, `s flow=4.5 MAP=62`. */
function loggedForm(
  file: CaseFile,
  { form }: FormStroke,
  typed: string,
  text: string,
  now: Instant,
): Outcome<CaseFile> {
  const texts = textsOf(form, text, formContext(file, now));
  const means = andThen(texts, (those) => formMeans(form, those, file, now));
  return andThen(harmlesslyRefused(means), ({ drafts, at, note }) =>
    taken(withEntries(file, drafts, { at, now, typed: typed.trim(), note })),
  );
}

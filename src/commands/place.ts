/** What verbs on cases need of the world: where cases are, and what time it is for them. */
import { fromIso, type Instant } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import { findCase } from "../store/case-list.ts";
import { openClock, realSources, recordedSteps } from "../store/clock.ts";
import { caseFolder } from "../store/folder.ts";
import { openCase, type ReadOnly } from "../store/open-case.ts";
import { copyFolder, copyOf } from "../store/second-copy.ts";
import { casesIn } from "./cases.ts";
import { CASE_FAULT, complain, WRONG_CALL } from "./speak.ts";

export type Place = {
  readonly dir?: string | undefined;
  /** The folder for second copies, where it was named. */
  readonly copyTo?: string | undefined;
};

export const folderOf = ({ dir }: Place): string => caseFolder(dir);

type Found = { readonly ok: true; readonly value: ReadOnly } | { readonly ok: false; readonly code: number };

/** The case that a path or a label names, or a complaint already made. */
export async function caseNamed(name: string, place: Place): Promise<Found> {
  const path = await findCase(folderOf(place), name, casesIn);
  if (!path.ok) return { ok: false, code: complain(`"${name}": ${path.fault}`, WRONG_CALL) };
  const copies = copyFolder(place.copyTo);
  const opened = await openCase(path.value, copies === null ? [] : [copyOf(path.value, copies)]);
  if (!opened.ok) return { ok: false, code: complain(`"${name}": ${opened.fault}`, CASE_FAULT) };
  if (opened.value.recovered !== null) complain(`"${name}": ${opened.value.recovered}`, CASE_FAULT);
  return opened;
}

/** The time a script gives, else the case's own clock. */
export function timeOf(given: string | undefined, file: CaseFile): Outcome<Instant> {
  if (given === undefined) return taken(openClock(realSources, recordedSteps(file.entries)).now());
  const at = fromIso(given);
  return at
    ? taken(at)
    : refused(`"${given}" is no time: type ISO 8601 with an offset, such as 2026-03-04T10:42:30+01:00.`);
}

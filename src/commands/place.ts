/** What every verb needs of the world: where cases are, and how to speak. */
import { fromIso, type Instant } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { harmless } from "../format/text.ts";
import type { CaseFile } from "../record/case.ts";
import { findCase } from "../store/case-list.ts";
import { openClock, realSources, recordedSteps } from "../store/clock.ts";
import { caseFolder } from "../store/folder.ts";
import { type OpenedCase, openCase } from "../store/open-case.ts";

/** Exit codes of every verb. */
export const DONE = 0;
export const CASE_FAULT = 1;
export const WRONG_CALL = 2;

export type Place = { readonly dir?: string | undefined };

export const say = (text: string): void => void process.stdout.write(`${text}\n`);

/** One sentence on standard error; gives the exit code back, so that a verb ends with it. */
export function complain(sentence: string, code: number): number {
  process.stderr.write(`pumpside: ${harmless(sentence)}\n`);
  return code;
}

export const folderOf = ({ dir }: Place): string => caseFolder(dir);

export type Found =
  | { readonly ok: true; readonly value: OpenedCase }
  | { readonly ok: false; readonly code: number };

/** The case that a path or a label names, or a complaint already made. */
export async function caseNamed(name: string, place: Place): Promise<Found> {
  const path = await findCase(folderOf(place), name);
  if (!path.ok) return { ok: false, code: complain(`"${name}": ${path.fault}`, WRONG_CALL) };
  const opened = await openCase(path.value);
  if (!opened.ok) return { ok: false, code: complain(`"${name}": ${opened.fault}`, CASE_FAULT) };
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

/** What verbs on cases need of the world: where cases are, and what time it is for them. */
import { fromIso, type Instant } from "../format/instant.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import { fileNamed, findCase } from "../store/case-list.ts";
import { openClock, realSources, recordedSteps } from "../store/clock.ts";
import { caseFolder } from "../store/folder.ts";
import { openCase, type ReadOnly } from "../store/open-case.ts";
import type { Safe } from "../store/safe.ts";
import { copiesOf, copyFolder } from "../store/second-copy.ts";
import { casesIn } from "./cases.ts";
import type { PassphraseFile } from "./passphrase.ts";
import { CASE_FAULT, complain, WRONG_CALL } from "./speak.ts";
import { type Found, safeAt } from "./unlock.ts";

export type Place = PassphraseFile & {
  readonly dir?: string | undefined;
  /** The folder for second copies, where it was named. */
  readonly copyTo?: string | undefined;
};

export const folderOf = ({ dir }: Place): string => caseFolder(dir);

type Whereabouts = { readonly path: string; readonly safe: Safe };

/** Where the case is that a path or a label names, and the safe it is in, or a complaint already made. */
export async function whereIs(name: string, place: Place): Promise<Found<Whereabouts>> {
  const folder = folderOf(place);
  const safe = await safeAt((await fileNamed(folder, name)) ?? folder, place);
  if (!safe.ok) return safe;
  const path = await findCase(folder, name, (from) => casesIn(from, safe.value));
  if (!path.ok) return { ok: false, code: complain(`"${name}": ${path.fault}`, WRONG_CALL) };
  return { ok: true, value: { path: path.value, safe: safe.value } };
}

/** The case that a path or a label names, or a complaint already made. */
export async function caseNamed(name: string, place: Place): Promise<Found<ReadOnly & Whereabouts>> {
  const where = await whereIs(name, place);
  if (!where.ok) return where;
  const { path, safe } = where.value;
  const opened = await openCase(path, copiesOf(path, copyFolder(place.copyTo)), safe);
  if (!opened.ok) return { ok: false, code: complain(`"${name}": ${opened.fault}`, CASE_FAULT) };
  if (opened.value.recovered !== null) complain(`"${name}": ${opened.value.recovered}`, CASE_FAULT);
  return { ok: true, value: { ...opened.value, safe } };
}

/** The time a script gives, else the case's own clock. */
export function timeOf(given: string | undefined, file: CaseFile): Outcome<Instant> {
  if (given === undefined) return taken(openClock(realSources, recordedSteps(file.entries)).now());
  const at = fromIso(given);
  return at
    ? taken(at)
    : refused(`"${given}" is no time: type ISO 8601 with an offset, such as 2026-03-04T10:42:30+01:00.`);
}

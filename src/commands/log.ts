/** `pumpside log`: one stroke from a script, by the same grammar and the same path to the record as the console. */
import { logged } from "../console/read-stroke.ts";
import { withEntry } from "../console/write.ts";
import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf, type Instant } from "../format/instant.ts";
import type { Outcome } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import { startsBefore } from "../store/clock.ts";
import { appendTo } from "../store/open-case.ts";
import type { Safe } from "../store/safe.ts";
import { copiesOf, copyFolder, copyOnce } from "../store/second-copy.ts";
import { forgetUnsaved } from "../store/unsaved.ts";
import { type Place, timeOf, whereIs } from "./place.ts";
import { CASE_FAULT, complain, DONE, say, WRONG_CALL } from "./speak.ts";

type LogOptions = Place & { readonly now?: string };

export async function logVerb(name: string, typed: string, options: LogOptions): Promise<number> {
  const where = await whereIs(name, options);
  if (!where.ok) return where.code;
  const { path, safe } = where.value;
  const copyTo = copyFolder(options.copyTo);
  let wrongCall = false;
  const next = (file: CaseFile, told: string | null): Outcome<CaseFile> => {
    if (told !== null) complain(told, CASE_FAULT);
    const now = timeOf(options.now, file);
    const becomes = now.ok ? loggedAt(file, typed, now.value, options.now === undefined) : now;
    wrongCall = !becomes.ok;
    return becomes;
  };
  const saved = await appendTo(path, next, { safe, copies: copiesOf(path, copyTo) });
  if (!saved.ok) return complain(`nothing was logged: ${saved.fault}`, wrongCall ? WRONG_CALL : CASE_FAULT);
  const entry = saved.value.entries.at(-1);
  if (entry) {
    const { subject, says } = entryWords(entry, saved.value.protocol);
    say(`saved #${entry.seq} ${clockTimeOf(entry.at)} ${subject} ${says}`);
  }
  await forgetUnsaved(path, saved.value, safe);
  return copied(path, saved.value, safe, copyTo);
}

/** Where the computer's clock was set back, the record goes on from its last time, and says so. */
function loggedAt(file: CaseFile, typed: string, now: Instant, isClock: boolean): Outcome<CaseFile> {
  const early = isClock ? startsBefore(file, now) : null;
  if (early === null) return logged(file, typed, now);
  const goesOn = { ...now, ms: now.ms + early };
  const stepped = withEntry(file, { kind: "clock", stepMs: -early }, { at: goesOn, now: goesOn, typed: "" });
  return logged(stepped, typed, goesOn);
}

/** The entry is saved, whatever becomes of the second copy. */
async function copied(path: string, file: CaseFile, safe: Safe, folder: string | null): Promise<number> {
  const why = folder === null ? null : await copyOnce(folder, path, file, safe);
  if (why !== null) complain(`saved, but not copied to the second folder: ${why}.`, DONE);
  return DONE;
}

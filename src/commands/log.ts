/** `pumpside log`: one stroke from a script, by the same grammar and the same path to the record as the console. */
import { logged } from "../console/read-stroke.ts";
import { entryWords } from "../figures/entry-words.ts";
import { clockTimeOf } from "../format/instant.ts";
import { findCase } from "../store/case-list.ts";
import { appendTo } from "../store/open-case.ts";
import { CASE_FAULT, complain, DONE, folderOf, type Place, say, timeOf, WRONG_CALL } from "./place.ts";

export type LogOptions = Place & { readonly now?: string };

export async function logVerb(name: string, typed: string, options: LogOptions): Promise<number> {
  const path = await findCase(folderOf(options), name);
  if (!path.ok) return complain(`"${name}": ${path.fault}`, WRONG_CALL);
  let wrongCall = false;
  const saved = await appendTo(path.value, (file) => {
    const now = timeOf(options.now, file);
    const next = now.ok ? logged(file, typed, now.value) : now;
    wrongCall = !next.ok;
    return next;
  });
  if (!saved.ok) return complain(`nothing was logged: ${saved.fault}`, wrongCall ? WRONG_CALL : CASE_FAULT);
  const entry = saved.value.entries.at(-1);
  if (entry) {
    const { subject, says } = entryWords(entry, saved.value.protocol);
    say(`saved #${entry.seq} ${clockTimeOf(entry.at)} ${subject} ${says}`);
  }
  return DONE;
}

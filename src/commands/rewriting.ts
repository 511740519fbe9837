/** Rewriting a folder, as the person at the terminal sees it: how far it is, how to stop it, and what came of it. */
import type { Outcome } from "../format/outcome.ts";
import type { Rewriting, Watching } from "../store/folder-encryption.ts";
import { progressOf } from "./progress.ts";
import { CASE_FAULT, complain, DONE, say } from "./speak.ts";

/** Does the work and says what came of it, all but the last word of one that went through; gives the exit code. */
export async function rewriting(
  what: string,
  work: (watching: Watching) => Promise<Outcome<Rewriting>>,
): Promise<number> {
  const stopping = new AbortController();
  const stop = () => stopping.abort();
  process.once("SIGINT", stop);
  const progress = progressOf(what);
  const done = await work({ onProgress: progress.at, signal: stopping.signal });
  progress.end();
  process.off("SIGINT", stop);
  if (!done.ok) return complain(done.fault, CASE_FAULT);
  const { files, left, isDone } = done.value;
  for (const { name, why } of left) complain(`${name} stays as it was: ${why}.`, CASE_FAULT);
  say(`Files rewritten: ${files}.`);
  if (!isDone)
    return complain("not every case was dealt with; all can be read: run it again to go on.", CASE_FAULT);
  return left.length === 0 ? DONE : CASE_FAULT;
}

/** Writing a file for somebody else: whole or not at all, only for its owner's eyes, and never over a case. */
import { mkdir, realpath } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import { durableWrite } from "../store/durable-write.ts";
import { faultWords } from "../store/fault-words.ts";
import { isCase } from "../store/folder-files.ts";

export type Writing = {
  /** Whether a file that is there already makes way. */
  readonly force: boolean;
  /** The real path of the case that it is made from. */
  readonly never: string;
};

/** The path it was written to, or a sentence. Makes the folder where there is none. Never rejects. */
export async function writeNew(
  path: string,
  text: string,
  { force, never }: Writing,
): Promise<Outcome<string>> {
  const there = await realpath(path).catch(() => null);
  if (there === never) return refused(`${path} is the case itself: name another file with --out.`);
  if (there !== null && !force)
    return refused(`${path} is there already: name another file, or add --force to replace it.`);
  if (there !== null && (await isCase(there)))
    return refused(`${path} is a case: name another file with --out.`);
  try {
    await mkdir(dirname(resolve(path)), { recursive: true });
    await durableWrite(path, [Buffer.from(text)]);
    return taken(path);
  } catch (error) {
    return refused(`${path} can't be written: ${faultWords(error)}.`);
  }
}

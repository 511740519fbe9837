/** Reading a case file from the disk: the case, or one sentence that says what is wrong. The file is left as it was. */
import { constants, open } from "node:fs/promises";
import { type Outcome, refused } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import { readCase } from "../record/reading-a-file.ts";
import { readingFaultWords, refusal } from "./fault-words.ts";
import { markAsRead } from "./sound-case.ts";

const MEGABYTE = 1024 * 1024;
/** A day of logging takes less than a hundredth of this. */
export const LARGEST_CASE = 64 * MEGABYTE;

/** Opening a pipe would otherwise wait for somebody to write into it. Windows has no such flag, and needs none. */
const READ_AT_ONCE = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

const utf8 = new TextDecoder("utf-8", { fatal: true });

/** Never throws; `fault` is a whole sentence without the file's name. */
export async function readCaseFile(path: string): Promise<Outcome<CaseFile>> {
  try {
    return caseIn(textOf(await bytesOf(path)));
  } catch (error) {
    return refused(`${readingFaultWords(error)}.`);
  }
}

async function bytesOf(path: string): Promise<Uint8Array> {
  const file = await open(path, READ_AT_ONCE);
  try {
    const found = await file.stat();
    if (found.isDirectory()) throw refusal("it is a folder, not a case file");
    if (!found.isFile()) throw refusal("it is not a file");
    if (found.size > LARGEST_CASE) {
      throw refusal(
        `the file is too large for a case (${Math.ceil(found.size / MEGABYTE)} MB, the limit is 64 MB)`,
      );
    }
    return await file.readFile();
  } finally {
    await file.close();
  }
}

function textOf(bytes: Uint8Array): string {
  try {
    return utf8.decode(bytes);
  } catch {
    throw refusal("the file is not text in UTF-8");
  }
}

function caseIn(text: string): Outcome<CaseFile> {
  const read = readWithin(text);
  if (read.ok) markAsRead(read.value);
  return read;
}

// Nesting without end runs out of stack, which is the only way reading can throw.
function readWithin(text: string): Outcome<CaseFile> {
  try {
    return readCase(text);
  } catch {
    return refused("the file is nested too deeply for a case.");
  }
}

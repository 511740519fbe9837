/** Reading a case file from the disk: the case, or one sentence that says what is wrong. The file is left as it was. */
import { constants } from "node:fs";
import { open } from "node:fs/promises";
import { type Outcome, refused, taken } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import { readCase } from "../record/reading-a-file.ts";
import type { Stat } from "./disk.ts";
import { readingFaultWords, refusal } from "./fault-words.ts";
import { ENVELOPE_BYTES, plain, type Safe } from "./safe.ts";
import { markAsRead } from "./sound-case.ts";

const MEGABYTE = 1024 * 1024;
/** A day of logging takes less than a hundredth of this. */
const LARGEST_CASE = 64 * MEGABYTE;

/** Opening a pipe would otherwise wait for somebody to write into it. Windows has no such flag, and needs none. */
export const READ_AT_ONCE = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

const utf8 = new TextDecoder("utf-8", { fatal: true });

/** A case, and what the disk said of its file when it was read. */
export type ReadCase = { readonly file: CaseFile; readonly stat: Stat };

/** Never throws; `fault` is a whole sentence without the file's name. */
export async function readCaseFile(path: string, safe: Safe = plain): Promise<Outcome<ReadCase>> {
  try {
    const { bytes, stat } = await bytesOf(path, safe);
    const read = caseInBytes(bytes);
    return read.ok ? taken({ file: read.value, stat }) : read;
  } catch (error) {
    return refused(`${readingFaultWords(error)}.`);
  }
}

type Bytes = { readonly bytes: Uint8Array; readonly stat: Stat };

/** The bytes of a file that may be a case, out of the safe. Throws a refusal or the system's error. */
export async function bytesOf(path: string, safe: Safe = plain): Promise<Bytes> {
  const { bytes, stat } = await bytesOnDisk(path);
  return { bytes: await safe.take(bytes), stat };
}

/** The same as they lie on the disk. */
export async function bytesOnDisk(path: string): Promise<Bytes> {
  const file = await open(path, READ_AT_ONCE);
  try {
    const stat = await file.stat();
    if (stat.isDirectory()) throw refusal("it is a folder, not a case file");
    if (!stat.isFile()) throw refusal("it is not a file");
    if (stat.size > LARGEST_CASE + ENVELOPE_BYTES) {
      throw refusal(
        `the file is too large for a case (${Math.ceil(stat.size / MEGABYTE)} MB, the limit is 64 MB)`,
      );
    }
    return { bytes: await file.readFile(), stat };
  } finally {
    await file.close();
  }
}

/** The case in bytes from anywhere, out of the safe. Never throws. */
export function caseInBytes(bytes: Uint8Array): Outcome<CaseFile> {
  try {
    return caseIn(utf8.decode(bytes));
  } catch {
    return refused("the file is not text in UTF-8.");
  }
}

/** The case in a text from anywhere. Never throws. */
export function caseIn(text: string): Outcome<CaseFile> {
  const read = readCase(text);
  if (read.ok) markAsRead(read.value);
  return read;
}

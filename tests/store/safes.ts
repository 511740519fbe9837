// Safes for tests: making a key takes half a second, so each is made once for a file of tests.

import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { newSafe } from "../../src/store/encrypting-safe.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import type { Safe } from "../../src/store/safe.ts";
import { aCase } from "./cases.ts";
import { withNotes } from "./notes.ts";

export const PASSPHRASE = "pigeon lantern upstairs";

/** The safe of one folder. */
export const aSafe: Safe = await newSafe(PASSPHRASE);
/** The safe of another folder, with another passphrase. */
export const othersSafe: Safe = await newSafe("somebody else's words");

/** What is in bytes that were kept, as text. */
export const textIn = async (safe: Safe, kept: Uint8Array): Promise<string> =>
  Buffer.from(await safe.take(kept)).toString("utf8");

export const put = (safe: Safe, text: string): Buffer => Buffer.concat([...safe.put([Buffer.from(text)])]);

/** Every file of a folder with its bytes, by its name. */
export async function filesIn(folder: string): Promise<Record<string, Buffer>> {
  const names = (await readdir(folder)).toSorted();
  return Object.fromEntries(
    await Promise.all(names.map(async (name) => [name, await readFile(join(folder, name))] as const)),
  );
}

/** The names of the files in which one of these texts can be read as it stands. */
export async function filesWith(folder: string, ...texts: string[]): Promise<string[]> {
  return Object.entries(await filesIn(folder)).flatMap(([name, bytes]) =>
    texts.some((text) => bytes.includes(text)) ? [name] : [],
  );
}

/** Saves a case with two entries, four, and so on, into the safe. */
export async function savedInSafe(path: string, entries = 10): Promise<void> {
  const low = lowCase(path, withNotes(aCase(), 1), { safe: aSafe });
  await low.write();
  while (low.data.entries.length < entries) {
    low.data = withNotes(low.data, 2);
    await low.write();
  }
}

/** How many entries a case in the safe holds, in a chain that is whole. */
export async function entriesInSafe(path: string): Promise<number> {
  const read = await readCaseFile(path, aSafe);
  if (!read.ok) throw new Error(read.fault);
  const fault = chainFault(read.value.file);
  if (fault !== null) throw new Error(JSON.stringify(fault));
  return read.value.file.entries.length;
}

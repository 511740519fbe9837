// Small cases and folders for tests of the store.

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { entryAt } from "./notes.ts";

/** A case that has just been opened. */
export const aCase = (id = "20260304-abcdef", label = "bench test"): CaseFile => ({
  format: CASE_FORMAT,
  version: CASE_VERSION,
  id,
  label,
  protocol: adultProtocol,
  entries: [entryAt(1, { kind: "opened" as const, operator: "AB" })],
});

/** The same case with one more entry of any kind. */
export const withEntry = (file: CaseFile, facts: object): CaseFile => ({
  ...file,
  entries: [...file.entries, entryAt(file.entries.length + 1, facts) as unknown as Entry],
});

/** A folder for one test and what removes it again. */
export async function scratchFolder(): Promise<{ folder: string; remove(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), "pumpside-store-"));
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}

// The sample cases as files: where they are kept, and how they are written, the same way the program saves a case.

import { rm } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { played } from "../../src/commands/invented/play.ts";
import type { Script } from "../../src/commands/invented/script.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { lowCase } from "../../src/store/case-adapter.ts";

export const sampleFolder = fileURLToPath(new URL("../../sample-cases", import.meta.url));

export const fileName = ({ id }: Script): string => `${id}.json`;

/** The case that a script makes. Throws the console's own words where it does not take a step. */
export function caseOf(script: Script): CaseFile {
  const outcome = played(script);
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value;
}

/** Writes a script's case into a folder, as a file made anew: no copy of an older one stays beside it. */
export async function writeSample(script: Script, folder: string): Promise<void> {
  const path = join(folder, fileName(script));
  await rm(path, { force: true });
  await lowCase(path, caseOf(script)).write();
}

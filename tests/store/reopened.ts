// A case that was read and is saved again, for tests of what another program does to its file meanwhile.

import { lowCase } from "../../src/store/case-adapter.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import type { Safe } from "../../src/store/safe.ts";
import { withNotes } from "./notes.ts";

/** Saves one more entry each time, with what was told of the file. */
export async function reopened(path: string, safe?: Safe) {
  const asRead = await readCaseFile(path, safe);
  if (!asRead.ok) throw new Error(asRead.fault);
  const told: string[] = [];
  const { value } = asRead;
  const low = lowCase(path, value.file, { asRead: value, safe, onForeign: (words) => told.push(words) });
  const save = async () => {
    low.data = withNotes(low.data, 1);
    await low.write();
  };
  return { save, told };
}

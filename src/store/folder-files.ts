/** The files that belong to the cases of a folder, case by case: the case itself and all that is kept beside it. */
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { fewAtOnce } from "./few-at-once.ts";
import { idInName } from "./folder.ts";
import { lastGoodOf } from "./last-good.ts";
import { bytesOnDisk, readCaseFile } from "./read-case-file.ts";
import { isEncrypted } from "./safe.ts";

/** Everything on the disk that holds something of one case; its lock does not. */
export type CaseFiles = {
  /** Where the case itself is, or was. */
  readonly path: string;
  readonly files: readonly string[];
  /** What a writer that was killed left half written: of no use to anybody. */
  readonly leftOver: readonly string[];
};

/** The case, what is kept beside it, and either of them while it is written. */
const OF_A_CASE = /^(.+\.json)(\.before|\.half-typed|\.(?:damaged|replaced)-[0-9]+)?(\.saving)?$/;

/** By name, so the oldest first. Files of other programs are passed over. Rejects with the system's error. */
export async function casesWithFiles(folder: string): Promise<CaseFiles[]> {
  const byCase = new Map<string, { path: string; files: string[]; leftOver: string[] }>();
  for (const name of (await readdir(folder)).toSorted()) {
    const [, ofCase, , saving] = OF_A_CASE.exec(name) ?? [];
    if (ofCase === undefined) continue;
    const found = byCase.get(ofCase) ?? { path: join(folder, ofCase), files: [], leftOver: [] };
    (saving ? found.leftOver : found.files).push(join(folder, name));
    byCase.set(ofCase, found);
  }
  const looked = async (one: CaseFiles) => ((await isOurs(one)) ? [one] : []);
  return (await fewAtOnce([...byCase.values()], looked)).flat();
}

const isOurs = async ({ path }: CaseFiles): Promise<boolean> =>
  (await isCase(path)) || (await isCase(lastGoodOf(path)));

/** Whether a file is a case, by its name, or else by what is in it; what is encrypted counts as one. Never rejects. */
export async function isCase(path: string): Promise<boolean> {
  if (idInName(path) !== null || (await readCaseFile(path)).ok) return true;
  return bytesOnDisk(path).then(
    ({ bytes }) => isEncrypted(bytes),
    () => false,
  );
}

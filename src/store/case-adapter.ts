/** How lowdb reads and writes a case: checked, chained, watched, and forced to the disk. */
import { type Adapter, Low } from "lowdb";
import type { CaseFile } from "../record/case.ts";
import { type Disk, realDisk, type Stat } from "./disk.ts";
import { durableWrite, temporaryOf } from "./durable-write.ts";
import { refusal } from "./fault-words.ts";
import { watchFile } from "./file-watch.ts";
import { keepAside, keepLastGood } from "./last-good.ts";
import { readCaseFile } from "./read-case-file.ts";
import { readyBytes } from "./ready-bytes.ts";
import { plain, type Safe } from "./safe.ts";

export type AdapterTools = {
  disk?: Disk | undefined;
  /** What the case is written into; its file lies there as it is without one. */
  safe?: Safe | undefined;
  /** The case as it was read and what the disk said of its file then; without it the first write looks at nothing. */
  asRead?: { readonly file: CaseFile; readonly stat: Stat } | undefined;
  /** Called when another program's doing was found in the place of the file, with a sentence. */
  onForeign?: ((words: string) => void) | undefined;
};

/** `read` and `write` throw errors that `faultWords` puts into words. One write at a time. */
export function caseAdapter(path: string, tools: AdapterTools = {}): Adapter<CaseFile> {
  const { disk = realDisk, safe = plain, onForeign } = tools;
  const bytesOf = readyBytes(tools.asRead?.file);
  const watch = watchFile(path, disk, safe, tools.asRead);

  /** Nothing that is not ours is ever overwritten: it keeps a name of its own. */
  const keepWhatIsThere = async (file: CaseFile): Promise<void> => {
    const [found, stat] = await Promise.all([watch.look(), disk.stat(temporaryOf(path))]);
    if (found === "ours") await keepLastGood(path, disk);
    if (found === "foreign") await keepAside(path, "replaced", disk);
    watch.expect({ stat, file });
    if (found !== "ours") onForeign?.(FOREIGN[found]);
  };

  return {
    async read() {
      const read = await readCaseFile(path, safe);
      if (!read.ok) throw refusal(read.fault.replace(/\.$/, ""));
      return read.value.file;
    },
    async write(file) {
      await durableWrite(path, safe.put(bytesOf(file)), disk, () => keepWhatIsThere(file));
      watch.settled();
    },
  };
}

const FOREIGN = {
  foreign:
    'Another program has changed the file of this case: that is kept beside it under a name with "replaced"; the record goes on as it is on this screen.',
  gone: "Another program has removed the file of this case: it has been written again, as it is on this screen.",
};

/** The case in lowdb's hands. Built by hand: lowdb's presets keep everything in memory where NODE_ENV is `test`. */
export const lowCase = (path: string, file: CaseFile, tools?: AdapterTools): Low<CaseFile> =>
  new Low<CaseFile>(caseAdapter(path, tools), file);

/** How lowdb reads and writes a case: checked, chained, and forced to the disk. */
import { type Adapter, Low } from "lowdb";
import type { CaseFile } from "../record/case.ts";
import { caseBytes } from "./case-bytes.ts";
import { type Disk, durableWrite } from "./durable-write.ts";
import { refusal } from "./fault-words.ts";
import { readCaseFile } from "./read-case-file.ts";

/** `read` and `write` throw errors that `faultWords` puts into words. One write at a time. */
export function caseAdapter(path: string, disk?: Disk): Adapter<CaseFile> {
  const bytesOf = caseBytes();
  return {
    async read() {
      const read = await readCaseFile(path);
      if (!read.ok) throw refusal(read.fault.replace(/\.$/, ""));
      return read.value;
    },
    async write(file) {
      await durableWrite(path, bytesOf(file), disk);
    },
  };
}

/** The case in lowdb's hands. Built by hand: lowdb's presets keep everything in memory where NODE_ENV is `test`. */
export const lowCase = (path: string, file: CaseFile, disk?: Disk): Low<CaseFile> =>
  new Low<CaseFile>(caseAdapter(path, disk), file);

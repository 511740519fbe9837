// A case of any length, as hours of a busy run would make it.

import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { logged } from "../../src/console/read-stroke.ts";
import { withEntry } from "../../src/console/write.ts";
import type { Instant } from "../../src/format/instant.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from "../../src/record/case.ts";
import { caseBytes } from "../../src/store/case-bytes.ts";

const BEGINNING = ["h30000", "a512", "b", "ffull", "t32", "x", "d600"];
const BUSY = ["v250c", "a480", "u40", "l1100", "f4.5", "h5000"];

function afterStrokes(file: CaseFile, strokes: readonly string[], at: Instant): CaseFile {
  return strokes.reduce((before, stroke) => {
    const after = logged(before, stroke, at);
    if (!after.ok) throw new Error(`${stroke}: ${after.fault}`);
    return after.value;
  }, file);
}

/** A case of so many entries, the last of them just before now. */
export function caseOf(count: number): CaseFile {
  const now = Date.now();
  const at = (seq: number): Instant => ({ ms: now - 60_000 - (count - seq) * 1000, offset: 0 });
  const empty: CaseFile = {
    format: CASE_FORMAT,
    version: CASE_VERSION,
    id: `20260304-bench${count}`,
    label: `bench ${count}`,
    protocol: adultProtocol,
    entries: [],
  };
  const opening = { at: at(1), now: at(1), typed: "" };
  const opened = withEntry(empty, { kind: "opened", operator: "AB" }, opening);
  const begun = afterStrokes(opened, BEGINNING, at(2));
  const busy = afterStrokes(begun, BUSY, at(3)).entries.slice(-BUSY.length);
  const entries = [...begun.entries];
  for (let seq = entries.length + 1; seq <= count; seq++) {
    const like = busy[seq % busy.length] as (typeof busy)[number];
    const when = new Date(at(seq).ms).toISOString().replace("Z", "+00:00");
    entries.push({ ...like, id: `e${seq}`, seq, at: when, loggedAt: when });
  }
  return { ...begun, entries };
}

/** Writes the case into a folder as the program would, and gives its path. */
export async function writeCase(folder: string, count: number): Promise<string> {
  const file = caseOf(count);
  const path = join(folder, `case-${file.id}.json`);
  await writeFile(path, Buffer.concat([...caseBytes()(file)]));
  return path;
}

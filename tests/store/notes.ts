// Notes to fill a case with; light, for the processes that are killed.

import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";

export const START = Date.UTC(2026, 2, 4, 8, 0, 0);

const iso = (ms: number): string => new Date(ms).toISOString().replace("Z", "+00:00");

/** An entry as a session makes it, a minute after the one before. */
export function entryAt<K extends object>(seq: number, facts: K) {
  const at = iso(START + seq * 60_000);
  return { id: `e${seq}`, seq, at, loggedAt: at, by: "AB", typed: "", ...facts };
}

export const noteAt = (seq: number, text = `note ${seq}`): Entry =>
  entryAt(seq, { kind: "note" as const, text, typed: `n ${text}` });

/** The same case with so many more notes. */
export function withNotes(file: CaseFile, count: number): CaseFile {
  const next = file.entries.length + 1;
  return {
    ...file,
    entries: [...file.entries, ...Array.from({ length: count }, (_, i) => noteAt(next + i))],
  };
}

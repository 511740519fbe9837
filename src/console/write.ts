/** Writing an entry: the one path to the record, for the console and for `pumpside log`. */

import { operatorOf } from "../figures/run.ts";
import { type Instant, toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Draft, Entry } from "../record/entry.ts";

export type Written = { at: Instant; now: Instant; typed: string; note?: string | null };

/** The case with the entry added at its end; everything before it stays as it is. */
export function withEntry(file: CaseFile, draft: Draft, { at, now, typed, note }: Written): CaseFile {
  const seq = file.entries.length + 1;
  const entry = {
    id: `e${seq}`,
    seq,
    at: toIso(at),
    loggedAt: toIso(now),
    by: operatorOf(file.entries),
    typed,
    ...(note ? { note } : {}),
    ...draft,
  } as Entry;
  return { ...file, entries: [...file.entries, entry] };
}

/** The same for several entries that belong together. */
export const withEntries = (file: CaseFile, drafts: readonly Draft[], written: Written): CaseFile =>
  drafts.reduce((longer, draft) => withEntry(longer, draft, written), file);

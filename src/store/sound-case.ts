/** What a case must be before it is written: nothing goes into a file that could not be read back. */
import type { CaseFile } from "../record/case.ts";
import { caseHeaderFor } from "../record/case-schema.ts";
import { fits, pointingFault } from "../record/correcting.ts";
import { type Entry, entrySchema } from "../record/entry.ts";
import { faultOf } from "../record/reading-a-file.ts";
import { refusal } from "./fault-words.ts";

const read = new WeakSet<Entry>();
const seals = new WeakMap<Entry, string>();

/** Stands in the place of a seal that was taken away: no entry has this hash. */
const NO_SEAL = "";

/** Entries that were read from a file have passed every check, and stay as they are from then on. */
export function markAsRead({ entries, seal = NO_SEAL }: CaseFile): void {
  for (const entry of entries) read.add(entry);
  const last = entries.at(-1);
  if (last !== undefined) seals.set(last, seal);
}

/** Whether an entry came from a file, and so needs no further check. */
export const wasRead = (entry: Entry): boolean => read.has(entry);

/** What the file said of an entry that was its last: another hash than the entry's own where somebody changed it. */
export const sealAsRead = (entry: Entry): string | undefined => seals.get(entry);

/** The head of a case with its fields in the schema's order. Throws a refusal when it is not valid. */
export function soundHead({ entries: _, seal: __, ...head }: CaseFile) {
  const parsed = caseHeaderFor(head.protocol).safeParse(head);
  if (!parsed.success) throw refusal(`the head of the case is not valid: ${faultOf(parsed.error)}`);
  return parsed.data;
}

/** The entry at a place (from nought) with its fields in the schema's order. Throws a refusal when it is not valid. */
export function soundEntry(entries: readonly Entry[], place: number): Entry {
  const entry = entries[place] as Entry;
  const number = place + 1;
  if (entry.seq !== number || entry.id !== `e${number}`) throw refusal(`entry ${number} is out of order`);
  if (wasRead(entry)) return entry;
  const parsed = entrySchema.safeParse(entry);
  const wrong = parsed.success ? correctionFault(entry, entries) : faultOf(parsed.error);
  if (!parsed.success || wrong !== null) throw refusal(`entry ${number} is not valid: ${wrong}`);
  return parsed.data;
}

function correctionFault(entry: Entry, entries: readonly Entry[]): string | null {
  const pointing = pointingFault(entry);
  if (pointing !== null) return `it ${pointing}`;
  if (entry.kind !== "amend") return null;
  const target = entries[Number(entry.target.slice(1)) - 1] as Entry;
  return fits(target, entry.changes) ? null : `it would make ${entry.target} an entry that is not valid`;
}

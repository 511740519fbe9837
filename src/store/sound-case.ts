/** What a case must be before it is written: nothing goes into a file that could not be read back. */
import { type CaseFile, caseHeader } from "../record/case.ts";
import { fits } from "../record/correcting.ts";
import { type Entry, entrySchema } from "../record/entry.ts";
import { faultOf } from "../record/reading-a-file.ts";

const soundEntries = new WeakSet<Entry>();
const soundHeads = new WeakMap<object, string>();

/** Entries that have passed the schema already, because they were read, need no second look. */
export function markSound(file: CaseFile): void {
  for (const entry of file.entries) soundEntries.add(entry);
  soundHeads.set(file.protocol, headKey(file));
}

/** What is wrong with the head of a case, in words, or `null`. Looks once at each head. */
export function headFault(file: CaseFile): string | null {
  const key = headKey(file);
  if (soundHeads.get(file.protocol) === key) return null;
  const parsed = caseHeader.safeParse(file);
  if (!parsed.success) return `the head of the case is not valid: ${faultOf(parsed.error)}`;
  soundHeads.set(file.protocol, key);
  return null;
}

/** What is wrong with the entry at a place (from nought), in words, or `null`. Looks once at each entry. */
export function entryFault(entries: readonly Entry[], place: number): string | null {
  const entry = entries[place] as Entry;
  const number = place + 1;
  if (entry.seq !== number || entry.id !== `e${number}`) return `entry ${number} is out of order`;
  if (soundEntries.has(entry)) return null;
  const wrong = schemaFault(entry) ?? targetFault(entry, entries);
  if (wrong !== null) return `entry ${number} is not valid: ${wrong}`;
  soundEntries.add(entry);
  return null;
}

const headKey = ({ format, version, id, label }: CaseFile): string =>
  JSON.stringify([format, version, id, label]);

function schemaFault(entry: Entry): string | null {
  const parsed = entrySchema.safeParse(entry);
  return parsed.success ? null : faultOf(parsed.error);
}

function targetFault(entry: Entry, entries: readonly Entry[]): string | null {
  if (entry.kind !== "amend" && entry.kind !== "void" && entry.kind !== "reminder-done") return null;
  const target = entries[Number(entry.target.slice(1)) - 1];
  if (target === undefined || target.seq >= entry.seq) {
    return `it points at ${entry.target}, which is not an earlier entry`;
  }
  if (entry.kind === "amend" && !fits(target, entry.changes)) {
    return `it would make ${entry.target} an entry that is not valid`;
  }
  return null;
}

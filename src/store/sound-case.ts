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

/** The first thing wrong with a case, in words, or `null`. Looks once at each entry and at each head. */
export function soundnessFault(file: CaseFile): string | null {
  const fault = headFault(file);
  if (fault !== null) return fault;
  for (const [place, entry] of file.entries.entries()) {
    if (entry.seq !== place + 1 || entry.id !== `e${place + 1}`) return `entry ${place + 1} is out of order`;
    if (soundEntries.has(entry)) continue;
    const wrong = entryFault(entry, file.entries);
    if (wrong !== null) return `entry ${place + 1} is not valid: ${wrong}`;
    soundEntries.add(entry);
  }
  return null;
}

const headKey = ({ format, version, id, label }: CaseFile): string =>
  JSON.stringify([format, version, id, label]);

function headFault(file: CaseFile): string | null {
  const key = headKey(file);
  if (soundHeads.get(file.protocol) === key) return null;
  const parsed = caseHeader.safeParse(file);
  if (!parsed.success) return `the head of the case is not valid: ${faultOf(parsed.error)}`;
  soundHeads.set(file.protocol, key);
  return null;
}

function entryFault(entry: Entry, entries: readonly Entry[]): string | null {
  const parsed = entrySchema.safeParse(entry);
  if (!parsed.success) return faultOf(parsed.error);
  if (entry.kind !== "amend" && entry.kind !== "void" && entry.kind !== "reminder-done") return null;
  const target = entries[Number(entry.target.slice(1)) - 1];
  if (target === undefined || target.seq >= entry.seq)
    return `it points at ${entry.target}, which is not an earlier entry`;
  if (entry.kind === "amend" && !fits(target, entry.changes))
    return `it would make ${entry.target} an entry that is not valid`;
  return null;
}

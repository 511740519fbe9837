/** Whether the times of a case can be true: written in order, and not before what they tell of happened. */
import { clockTimeOf, fromIso, msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";

/** Milliseconds by which clocks may differ without anybody having set one. */
const TOLERANCE = 60_000;

/** Each entry whose times can't be true, a sentence each. */
export function timeFaults({ entries }: Pick<CaseFile, "entries">): string[] {
  return entries.flatMap((entry, place) => {
    const before = entries[place - 1];
    return [before ? backwards(before, entry) : null, tooEarly(entry)].filter((fault) => fault !== null);
  });
}

/** The record's own time goes on when the clock is set back, and a `clock` entry says by how much it was. */
function backwards(before: Entry, entry: Entry): string | null {
  if (entry.kind === "clock" || msOf(entry.loggedAt) >= msOf(before.loggedAt)) return null;
  const [now, then] = [clockTimeOf(entry.loggedAt), clockTimeOf(before.loggedAt)];
  return `entry ${entry.seq} says that it was written at ${now}, before entry ${before.seq} (${then}), and no clock entry says why.`;
}

/** What is written has happened, also when it is put right. */
function tooEarly(entry: Entry): string | null {
  const moved = entry.kind === "amend" ? entry.changes.at : undefined;
  const at = typeof moved === "string" ? (fromIso(moved)?.ms ?? 0) : msOf(entry.at);
  if (at <= msOf(entry.loggedAt) + TOLERANCE) return null;
  return `entry ${entry.seq} was written at ${clockTimeOf(entry.loggedAt)} about something that happens later.`;
}

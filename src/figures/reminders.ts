/** Reminders that are still open. */
import { msOf } from "../format/instant.ts";
import type { EntryOf } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";

export type Reminder = { readonly entry: EntryOf<"reminder">; readonly due: number };

/** Open reminders other than those for the next dose, the earliest due first. */
export function openReminders(facts: readonly Fact[]): Reminder[] {
  const done = new Set(ofKind(facts, "reminder-done").map(({ entry }) => entry.target));
  return ofKind(facts, "reminder")
    .filter(({ entry }) => entry.about === "other" && !done.has(entry.id))
    .map(({ entry }) => ({ entry, due: msOf(entry.dueAt) }))
    .sort((a, b) => a.due - b.due);
}

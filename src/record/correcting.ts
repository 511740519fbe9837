/** Putting an entry right: changes laid over an earlier one. */
import { type Entry, entrySchema } from "./entry.ts";

/** The entry with the changes made; a change to `null` takes the field away. */
export function corrected<E extends Entry>(entry: E, changes: object): E {
  const result: { [field: string]: unknown } = { ...entry, ...changes };
  for (const [field, value] of Object.entries(changes)) if (value === null) delete result[field];
  return result as E;
}

/** What is wrong with where an entry points: only an earlier one may be put right, struck out or ended. */
export function pointingFault(entry: Entry): string | null {
  if (entry.kind !== "amend" && entry.kind !== "void" && entry.kind !== "reminder-done") return null;
  const pointsBack = Number(entry.target.slice(1)) < entry.seq;
  return pointsBack ? null : `points at ${entry.target}, which is not an earlier entry`;
}

/** Whether an entry would still be valid with these changes. */
export const fits = (entry: Entry, changes: object): boolean =>
  entrySchema.safeParse(corrected(entry, changes)).success;

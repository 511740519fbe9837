/** Putting an entry right: changes laid over it. */
import { type Entry, entrySchema } from "./entry.ts";

/** The entry with the changes made; a change to `null` takes the field away. */
export function corrected<E extends Entry>(entry: E, changes: object): E {
  const result: { [field: string]: unknown } = { ...entry, ...changes };
  for (const [field, value] of Object.entries(changes)) if (value === null) delete result[field];
  return result as E;
}

/** Whether an entry would still be valid with these changes. */
export const fits = (entry: Entry, changes: object): boolean =>
  entrySchema.safeParse(corrected(entry, changes)).success;

/** Whether a draft would make a valid entry: nothing is written that could not be read back. */
import { type Draft, entrySchema } from "./entry.ts";
import { faultOf } from "./reading-a-file.ts";

/** Stands for what writing adds. */
const WRITTEN = {
  id: "e1",
  seq: 1,
  at: "2000-01-01T00:00:00.000Z",
  loggedAt: "2000-01-01T00:00:00.000Z",
  by: "",
  typed: "",
};

/** The first thing that keeps a draft from being an entry, as place and reason; `null` when nothing does. */
export function draftFault(draft: Draft): string | null {
  const parsed = entrySchema.safeParse({ ...WRITTEN, ...draft });
  return parsed.success ? null : faultOf(parsed.error);
}

/** The bell, where a person has asked for it: once for each thing that becomes due. It is no alarm and says nothing more. */
import { dueOf } from "../figures/due.ts";
import { readRun } from "../figures/run.ts";
import type { CaseFile } from "../record/case.ts";

/** Looks at a case at a moment, in milliseconds since the epoch, and rings when something has become due since the last look. */
export function hangBell(ring: () => void): (file: CaseFile, now: number) => void {
  let known: ReadonlySet<string> | null = null;
  return (file, now) => {
    const due = new Set(
      dueOf(readRun(file, now))
        .filter((one) => one.due <= now)
        .map((one) => `${one.what} ${one.target ?? ""} ${one.due}`),
    );
    const before = known;
    if (before !== null && [...due].some((one) => !before.has(one))) ring();
    known = due;
  };
}

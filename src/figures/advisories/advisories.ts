/** The advisories that stand at a moment, in the order in which they are shown. */
import { msOf } from "../../format/instant.ts";
import type { EntryOf } from "../../record/entry.ts";
import { type Fact, ofKind } from "../../record/standing.ts";
import type { Run } from "../run.ts";
import { PRIORITIES, type Said } from "./advisory.ts";
import { ADVISORIES } from "./table.ts";

export type Shown = Said & {
  readonly id: string;
  /** Milliseconds since it stands. */
  readonly age: number;
  /** The answer it was given, if that still holds. */
  readonly acknowledged: Fact<EntryOf<"acknowledged">> | null;
};

/**
 * What stands now: unanswered first, then by priority, then the longest standing first. An answer holds when it was
 * written at or after the moment since which the advisory stands, and after the last entry that brought it about: so
 * it ends when the condition comes again, with a newer entry, or at a later moment.
 */
export function advisoriesOf(run: Run): readonly Shown[] {
  const answers = ofKind(run.course.record.facts, "acknowledged");
  return ADVISORIES.flatMap(({ id, says }): Shown[] => {
    const said = says(run);
    if (!said) return [];
    const acknowledged = answers.findLast(({ entry }) => entry.advisory === id && answersTo(entry, said));
    return [{ id, ...said, age: Math.max(0, run.now - said.since), acknowledged: acknowledged ?? null }];
  }).sort(
    (a, b) =>
      Number(a.acknowledged !== null) - Number(b.acknowledged !== null) ||
      PRIORITIES.indexOf(a.priority) - PRIORITIES.indexOf(b.priority) ||
      a.since - b.since,
  );
}

const answersTo = ({ seq, loggedAt }: EntryOf<"acknowledged">, { since, after }: Said): boolean =>
  seq > after && msOf(loggedAt) >= since;

/** Spans: when something was on, as intervals, and how long in all. */

import type { EntryOf } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";

export type Interval = {
  readonly what: string;
  readonly way: string | undefined;
  readonly from: number;
  /** `null` while it is still on. */
  readonly to: number | null;
  readonly on: Fact<EntryOf<"span">>;
};

/** Intervals by the name of the span, each list in the order of happening. */
export type Spans = ReadonlyMap<string, readonly Interval[]>;

const NONE: readonly Interval[] = [];

/** The intervals of a span, none where it was never on. */
export const intervalsOf = (spans: Spans, what: string): readonly Interval[] => spans.get(what) ?? NONE;

/**
 * Pairs every "on" with the next "off" of the same span. A second "on" changes nothing unless it changes the way
 * (then one interval ends and the next begins); an "off" of something that is not on changes nothing.
 */
export function readSpans(facts: readonly Fact[]): Spans {
  const spans = new Map<string, Interval[]>();
  for (const fact of ofKind(facts, "span")) {
    const { what, state, way } = fact.entry;
    const list = spans.get(what) ?? [];
    spans.set(what, list);
    const open = list.at(-1)?.to === null ? (list.at(-1) as Interval) : undefined;
    const goesOn = state === "on" && open && (way === undefined || way === open.way);
    if (goesOn) continue;
    if (open) list[list.length - 1] = { ...open, to: fact.at };
    if (state === "on") list.push({ what, way, from: fact.at, to: null, on: fact });
  }
  return spans;
}

/** The interval that is on, if any. */
export const openInterval = (list: readonly Interval[]): Interval | undefined => {
  const last = list.at(-1);
  return last?.to === null ? last : undefined;
};

/** Milliseconds an interval has lasted at `now`; never below zero. */
export const lasted = ({ from, to }: Interval, now: number): number =>
  Math.max(0, Math.min(to ?? now, now) - from);

/** Milliseconds of all intervals at `now`. */
export const total = (list: readonly Interval[], now: number): number =>
  list.reduce((sum, interval) => sum + lasted(interval, now), 0);

/** The intervals as far as they lie after a moment. */
export const after = (list: readonly Interval[], moment: number): Interval[] =>
  list
    .filter(({ to }) => to === null || to > moment)
    .map((interval) => ({ ...interval, from: Math.max(interval.from, moment) }));

/** The interval within which a moment lies, if any; the end does not belong to it. */
export const intervalAt = (list: readonly Interval[], moment: number): Interval | undefined =>
  list.find(({ from, to }) => from <= moment && (to === null || moment < to));

/** Whether a moment lies within one of the intervals. */
export const isOnAt = (list: readonly Interval[], moment: number): boolean =>
  intervalAt(list, moment) !== undefined;

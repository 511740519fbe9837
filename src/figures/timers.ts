/** The clocks of the run: bypass, arrest, reperfusion, circulatory arrest. */
import { after, type Interval, intervalsOf, lasted, openInterval, type Spans, total } from "./spans.ts";

export type Timer = {
  /** Milliseconds in all, or `null` when it was never on. */
  readonly total: number | null;
  /** Milliseconds of the interval that is on, or `null` when none is. */
  readonly current: number | null;
  readonly intervals: readonly Interval[];
};

export type Timers = {
  readonly bypass: Timer;
  readonly arrest: Timer;
  readonly reperfusion: Timer;
  readonly circulatoryArrest: Timer;
};

/** All clocks at `now`, in milliseconds. */
export function readTimers(spans: Spans, now: number): Timers {
  return {
    bypass: timerOf(intervalsOf(spans, "bypass"), now),
    arrest: timerOf(intervalsOf(spans, "clamp"), now),
    reperfusion: timerOf(reperfused(spans), now),
    circulatoryArrest: timerOf(intervalsOf(spans, "circulatory-arrest"), now),
  };
}

/** The clock of some intervals at `now`, in milliseconds. */
export function timerOf(intervals: readonly Interval[], now: number): Timer {
  const open = openInterval(intervals);
  return {
    total: intervals.length === 0 ? null : total(intervals, now),
    current: open ? lasted(open, now) : null,
    intervals,
  };
}

/** The time on bypass since the clamp last came off; nothing while a clamp is on. */
function reperfused(spans: Spans): readonly Interval[] {
  const lastClamp = intervalsOf(spans, "clamp").at(-1);
  if (!lastClamp || lastClamp.to === null) return [];
  return after(intervalsOf(spans, "bypass"), lastClamp.to);
}

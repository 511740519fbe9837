/** When the next dose of arrest solution is due. */
import { MINUTE } from "../format/duration.ts";
import { msOf } from "../format/instant.ts";
import { type Fact, ofKind } from "../record/standing.ts";
import { type Dose, lastEnded, runningDose } from "./doses.ts";
import { type Interval, openInterval } from "./spans.ts";

export type NextDose = {
  /** Milliseconds since the last dose ended; `null` when there is none, or one is running. */
  readonly since: number | null;
  /** The moment it is due, in milliseconds since the epoch; `null` when there is nothing to wait for. */
  readonly due: number | null;
  /** Why it is due then: the solution's interval, or the surgeon's word. */
  readonly because: string;
};

/** Why a dose is due at the time that a reminder gives it. */
export const BY_ORDER = "time given by order";

/**
 * Due at the end of the last dose plus the interval of its solution, or at the time set by a reminder written since
 * that dose began; only while a clamp is on and no dose is running. A dose under an earlier clamp sets nothing due.
 */
export function nextDose(
  facts: readonly Fact[],
  doses: readonly Dose[],
  clamps: readonly Interval[],
  now: number,
): NextDose {
  const last = lastEnded(doses);
  const running = runningDose(doses) !== undefined;
  const since = last?.end == null || running ? null : Math.max(0, now - last.end);
  const clamped = openInterval(clamps);
  if (!clamped || running)
    return { since, due: null, because: running ? "a dose is running" : "no clamp is on" };
  const order = ofKind(facts, "reminder").findLast(
    (fact) => fact.entry.about === "dose" && fact.at >= (last?.start ?? clamped.from),
  );
  if (order) return { since, due: msOf(order.entry.dueAt), because: BY_ORDER };
  if (last?.end == null) return { since, due: null, because: "no dose yet" };
  if (last.end < clamped.from) return { since, due: null, because: "none since clamp on" };
  const interval = last.solution?.interval;
  if (!interval) return { since, due: null, because: "this solution has no interval" };
  return {
    since,
    due: last.end + interval.value * MINUTE,
    because: `${interval.value} min after the last dose ended`,
  };
}

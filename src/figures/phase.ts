/** The phase of the run, as it follows from the spans and the flow ordered. */
import { type Fact, lastOf } from "../record/standing.ts";
import { intervalsOf, openInterval, type Spans } from "./spans.ts";

export const PHASES = ["before", "on bypass", "arrested", "reperfusing", "weaning", "after"] as const;
export type Phase = (typeof PHASES)[number];

/**
 * Arrested while a clamp or circulatory arrest is on; weaning when, on bypass and unclamped, the flow ordered since
 * lies below full; reperfusing when the clamp has been off in this run; after once bypass has ended.
 */
export function phaseOf(facts: readonly Fact[], spans: Spans, fullFlow: number | null): Phase {
  const bypass = intervalsOf(spans, "bypass");
  const clamps = intervalsOf(spans, "clamp");
  if (openInterval(clamps) || openInterval(intervalsOf(spans, "circulatory-arrest"))) return "arrested";
  const run = openInterval(bypass);
  if (!run) return bypass.length > 0 ? "after" : "before";
  const unclamped = clamps.at(-1)?.to ?? null;
  const began = Math.max(run.from, unclamped ?? run.from);
  const order = lastOf(facts, "flow");
  if (order && order.at >= began && isBelowFull(order.entry, fullFlow)) return "weaning";
  return unclamped !== null && unclamped >= run.from ? "reperfusing" : "on bypass";
}

/** A fraction below one, or litres a minute clearly (by a tenth) below a full flow that is known. */
function isBelowFull(
  order: { fraction?: number | undefined; litresPerMinute?: number | undefined },
  full: number | null,
): boolean {
  if (order.fraction !== undefined) return order.fraction < 1;
  return full !== null && (order.litresPerMinute ?? full) < 0.9 * full;
}

/** The litres a minute an order means; `null` for a fraction while full flow is not known. */
export function litresOf(
  order: { fraction?: number | undefined; litresPerMinute?: number | undefined },
  full: number | null,
): number | null {
  if (order.litresPerMinute !== undefined) return order.litresPerMinute;
  return full === null || order.fraction === undefined ? null : order.fraction * full;
}

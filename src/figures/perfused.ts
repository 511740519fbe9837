/** When the pump perfuses the whole body: on bypass, in neither circulatory arrest nor cerebral perfusion. */
import { intervalsOf, type Spans } from "./spans.ts";

/** A stretch of time in milliseconds since the epoch; `to` is `null` while it goes on. */
export type Stretch = { readonly from: number; readonly to: number | null };

/** Spans in which the body is left without flow on purpose, so that limits for the whole body say nothing. */
const ASIDE = ["circulatory-arrest", "cerebral-perfusion"] as const;

/** The stretches on bypass with the whole body perfused, in the order of happening. */
export function perfused(spans: Spans): readonly Stretch[] {
  const aside = ASIDE.flatMap((what) => intervalsOf(spans, what));
  return aside.reduce<readonly Stretch[]>(without, intervalsOf(spans, "bypass"));
}

/** Whether a moment lies in one of the stretches; the end does not belong to it. */
export const liesIn = (stretches: readonly Stretch[], moment: number): boolean =>
  stretches.some(({ from, to }) => from <= moment && moment < (to ?? Number.POSITIVE_INFINITY));

/** The stretches without what lies in another one. */
function without(stretches: readonly Stretch[], gap: Stretch): Stretch[] {
  const end = gap.to ?? Number.POSITIVE_INFINITY;
  return stretches.flatMap(({ from, to }) => {
    const before = { from, to: to === null ? gap.from : Math.min(to, gap.from) };
    const after = { from: Math.max(from, end), to };
    return [before, after].filter((part) => part.from < (part.to ?? Number.POSITIVE_INFINITY));
  });
}

/** The middle and the spread of numbers. */

export type Quartiles = {
  readonly lowest: number;
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
  readonly highest: number;
};

/**
 * The value below which the share `part` (0 to 1) of the values lies. Rule: the values in order stand at the places 0 to
 * n − 1; the place is part × (n − 1), and between two values it is a straight line. Source: Hyndman RJ, Fan Y. Am Stat
 * 1996;50:361–365, definition 7. `null` for no value.
 */
export function quantile(inOrder: readonly number[], part: number): number | null {
  const place = part * (inOrder.length - 1);
  const [below, above] = [inOrder[Math.floor(place)], inOrder[Math.ceil(place)]];
  if (below === undefined || above === undefined) return null;
  return below + (above - below) * (place - Math.floor(place));
}

/** `null` for no value. */
export function quartilesOf(values: readonly number[]): Quartiles | null {
  const inOrder = values.toSorted((a, b) => a - b);
  const [lowest, lower, median, upper, highest] = [0, 0.25, 0.5, 0.75, 1].map((part) =>
    quantile(inOrder, part),
  );
  if (lowest == null || lower == null || median == null || upper == null || highest == null) return null;
  return { lowest, lower, median, upper, highest };
}

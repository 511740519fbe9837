/** How figures are made of figures: what one of them lacks, the result lacks too. */
import { type Figure, known, missing } from "./figure.ts";

type Made = {
  /** `null` where the values do not allow one; the working then says why. */
  readonly value: number | null;
  readonly working: string;
  readonly source?: string | undefined;
};

/** A value from the record or from a person, or what is missing in its place. */
export const given = (value: number | null | undefined, unit: string, name: string): Figure =>
  value === null || value === undefined ? missing(unit, `no ${name} recorded`) : known(value, unit, name);

/** A figure in `unit` from the values of others; a division by nought has no value. */
export function derived(
  unit: string,
  inputs: readonly Figure[],
  make: (...values: number[]) => Made,
): Figure {
  const lacking = inputs.flatMap(({ value, working }) => (value === null ? working.split(", ") : []));
  if (lacking.length > 0) return missing(unit, [...new Set(lacking)].join(", "));
  const { value, working, source } = make(...inputs.map(({ value }) => value as number));
  if (value === null) return missing(unit, working);
  return Number.isFinite(value) ? known(value, unit, working, source) : missing(unit, `no value: ${working}`);
}

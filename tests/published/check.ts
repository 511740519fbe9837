/** What is held against the outside: a value somebody printed, or that follows from a printed formula, beside our figure. */
import type { Figure } from "../../src/figures/figure.ts";

export const SURENESS = {
  Q: "read on the page cited",
  Q2: "read on a page that reports the work cited",
  C: "computed from the published formula",
  M: "no published source",
} as const;

export type Sureness = keyof typeof SURENESS;

type Value = number | string | boolean | null;

export type Check = {
  readonly id: string;
  readonly what: string;
  readonly inputs: string;
  readonly expected: Value;
  /** How far a number may lie off: half of the last digit that is printed. */
  readonly tolerance: number;
  readonly source: string;
  readonly sureness: Sureness;
  readonly got: () => Figure | Value;
};

export type Section = { readonly name: string; readonly checks: readonly Check[] };

type Shared = Pick<Check, "what" | "source" | "sureness">;
type Row = readonly [id: string, inputs: string, expected: Value, tolerance: number, got: Check["got"]];

/** Checks of one subject from one source, a row each. */
export const group = (shared: Shared, rows: readonly Row[]): Check[] =>
  rows.map(([id, inputs, expected, tolerance, got]) => ({ ...shared, id, inputs, expected, tolerance, got }));

export type Outcome = { readonly value: Value; readonly unit: string; readonly met: boolean };

/** Binary fractions make a difference of 0.05 a hair more than that. */
const HAIR = 1e-12;

/** What our figure gives, and whether that is what was expected. */
export function outcomeOf({ expected, tolerance, got }: Check): Outcome {
  const found = got();
  const figure = found !== null && typeof found === "object" ? found : { value: found, unit: "" };
  const { value } = figure;
  const met =
    typeof expected === "number" && typeof value === "number"
      ? Math.abs(value - expected) <= tolerance + HAIR * Math.abs(expected)
      : value === expected;
  return { value, unit: figure.unit, met };
}

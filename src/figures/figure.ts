/** A figure: a number that says how it was made, or that says what it lacks. Unknown is not zero. */
import { fixed } from "../format/number.ts";
import { unitText } from "../format/unit.ts";

export type Figure = {
  readonly value: number | null;
  /** UCUM code. */
  readonly unit: string;
  /** The formula with the numbers put in; where the value is not known, what is missing. */
  readonly working: string;
  /** On whose word the formula or its constants stand. */
  readonly source?: string;
};

/** A value in a UCUM unit, with the formula in numbers and on whose word it stands. */
export const known = (value: number, unit: string, working: string, source?: string): Figure =>
  source === undefined ? { value, unit, working } : { value, unit, working, source };

/** No value, and what is missing for one: `no weight recorded`. */
export const missing = (unit: string, what: string): Figure => ({ value: null, unit, working: what });

/** The value with its unit, rounded for display only: `4.36 L/min`, `– L/min`. */
export const figureText = ({ value, unit }: Figure, decimals = 0): string =>
  `${fixed(value, decimals)} ${unitText(unit)}`.trim();

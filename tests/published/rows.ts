/** The table of published checks as text: what was expected, what our figure gives, and where it is from. */
import { plain } from "../../src/format/number.ts";
import { unitText } from "../../src/format/unit.ts";
import { type Check, outcomeOf, SURENESS } from "./check.ts";

/** Two rows a check. */
export const rowsOf = (checks: readonly Check[]): string[] =>
  checks.flatMap((check) => {
    const { value, unit, met } = outcomeOf(check);
    const got = `${worded(value)} ${unitText(unit)}`.trim();
    return [
      `${met ? "ok  " : "FAIL"} ${check.id}: ${check.what}; ${check.inputs}`,
      `     expected ${expectedText(check)}, got ${got} · ${SURENESS[check.sureness]}: ${check.source}`,
    ];
  });

function expectedText({ expected, tolerance }: Check): string {
  const off = tolerance >= 0.000_001 && typeof expected === "number" ? ` ± ${digits(tolerance)}` : "";
  return `${worded(expected)}${off}`;
}

const WORDS = new Map<unknown, string>([
  [true, "yes"],
  [false, "no"],
  [null, "no value"],
]);

const worded = (value: Check["expected"]): string =>
  WORDS.get(value) ?? (typeof value === "number" ? digits(value) : String(value));

/** Small numbers keep the digits that tell them apart. */
const digits = (value: number): string =>
  Math.abs(value) < 100 && value !== 0 ? String(Number(value.toPrecision(6))) : plain(value);

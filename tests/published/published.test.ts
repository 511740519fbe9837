/** The figures held against published values, and the label of each value held to what it may claim. */
import { describe, expect, test } from "vitest";
import { type Check, outcomeOf, type Sureness } from "./check.ts";
import { CHECKS, SECTIONS } from "./checks.ts";
import { rowsOf } from "./rows.ts";

describe.each(SECTIONS)("$name", ({ checks }) => {
  test.each(checks)("$id: $what, $inputs", (check: Check) => {
    const { value, met } = outcomeOf(check);
    expect(met, `${value} for ${check.expected} ± ${check.tolerance}: ${check.source}`).toBe(true);
  });
});

describe("the table", () => {
  test("names every check once", () => {
    const ids = CHECKS.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
  });

  const LABELS: Readonly<Record<Sureness, RegExp>> = {
    Q: /^(?!from memory|common practice).{10,}$/,
    Q2: /^(?!from memory|common practice).{10,}$/,
    C: /^(?!from memory|common practice).{5,}$/,
    M: /^(from memory|common practice, no source)\b/,
  };

  test("claims no more of a source than there is", () => {
    for (const { id, source, sureness } of CHECKS) expect(source, id).toMatch(LABELS[sureness]);
  });

  test("holds all twelve traps", () => {
    const found = CHECKS.flatMap(({ id }) => /^traps\/(\d+)-/.exec(id)?.[1] ?? []);
    expect([...new Set(found)].map(Number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  test("is printed with what was expected, what we get, and where it is from", () => {
    const text = rowsOf(CHECKS).join("\n");
    expect(text).toContain("833 ± 0.5");
    expect(text).toContain("833.333 mL");
    expect(text).toContain("Haemodilution Calculations, teaching notes at perfusion.com.au");
    expect(text).not.toMatch(/NaN|undefined/);
  });
});

describe("a check", () => {
  const check = (expected: Check["expected"], tolerance: number, got: number | null): Check => ({
    id: "made-up",
    what: "anything",
    inputs: "none",
    expected,
    tolerance,
    source: "made up here",
    sureness: "C",
    got: () => got,
  });

  test("is met within its tolerance and not beyond", () => {
    expect(outcomeOf(check(39.9, 0.05, 39.95)).met).toBe(true);
    expect(outcomeOf(check(39.9, 0.05, 39.951)).met).toBe(false);
  });

  test("is not met by a figure without a value, unless that is what is expected", () => {
    expect(outcomeOf(check(0, 1, null)).met).toBe(false);
    expect(outcomeOf(check(null, 0, null)).met).toBe(true);
    expect(outcomeOf(check(1, 1, Number.NaN)).met).toBe(false);
  });
});

/** The figures held against published values, and the label of each value held to what it may claim. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bodySurface } from "../../src/figures/body-surface.ts";
import { toShown } from "../../src/figures/conversions.ts";
import { ucum } from "../helpers/ucum.ts";
import { CHECKS, type Sureness } from "./checks.ts";
import { RECKONED } from "./reckoned.ts";

test.each(CHECKS.map((check) => [check.id, check] as const))("%s", (_, check) => {
  const found = RECKONED[check.what](check.inputs);
  expect(found, check.source).not.toBeNull();
  expect(
    Math.abs((found ?? 0) - check.expected),
    `${found} for ${check.expected}: ${check.source}`,
  ).toBeLessThanOrEqual(check.tolerance);
});

describe("the table", () => {
  test("names every check once", () => {
    const ids = CHECKS.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
  });

  const LABELS: Readonly<Record<Sureness, RegExp>> = {
    Q: /^(?!computed|from memory|common practice).{10,}$/,
    Q2: /^(?!computed|from memory|common practice).{10,}$/,
    C: /^computed from the published /,
    M: /^(from memory|common practice, no source)\b/,
  };

  test("claims no more of a source than there is", () => {
    for (const { id, source, sureness } of CHECKS) expect(source, id).toMatch(LABELS[sureness]);
  });

  test("holds a check of everything that can be reckoned for it", () => {
    expect(Object.keys(RECKONED).filter((what) => !CHECKS.some((check) => check.what === what))).toEqual([]);
  });
});

describe("body surface, as a whole", () => {
  const surface = (formula: "dubois" | "mosteller" | "haycock", kg: number, cm: number) =>
    bodySurface(formula, kg, cm).value ?? Number.NaN;

  test("80 kg and 180 cm are two square metres after Mosteller, to the last digit", () => {
    expect(surface("mosteller", 80, 180)).toBe(2);
  });

  test("rounds to two decimals only for display: 65 kg and 165 cm are 1.73, not the printed 1.72", () => {
    expect(surface("mosteller", 65, 165).toFixed(2)).toBe("1.73");
    expect(surface("dubois", 65, 165).toFixed(2)).toBe("1.72");
  });

  test("the three formulas change their order between 15 and 20 kg", () => {
    const order = (kg: number, cm: number) =>
      (["dubois", "mosteller", "haycock"] as const).toSorted(
        (a, b) => surface(a, kg, cm) - surface(b, kg, cm),
      );
    expect(order(15, 98)).toEqual(["dubois", "mosteller", "haycock"]);
    expect(order(20, 115)).toEqual(["haycock", "mosteller", "dubois"]);
  });

  test("grows with weight and height", () => {
    const kg = fc.double({ min: 1, max: 250, noNaN: true });
    const cm = fc.double({ min: 35, max: 230, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom("dubois", "mosteller", "haycock"), kg, cm, (formula, weight, height) => {
        const area = surface(formula, weight, height);
        expect(surface(formula, weight * 1.01, height)).toBeGreaterThan(area);
        expect(surface(formula, weight, height * 1.01)).toBeGreaterThan(area);
      }),
    );
  });
});

test("kPa are what a public library of units makes of mmHg", () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 700, noNaN: true }), (mmHg) => {
      expect(toShown("oxygen", "kPa", mmHg)).toBeCloseTo(
        ucum.convertUnitTo("mm[Hg]", mmHg, "kPa").toVal ?? 0,
        3,
      );
    }),
  );
});

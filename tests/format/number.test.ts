/** Numbers as text. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fixed, grouped, plain, signed } from "../../src/format/number.ts";
import { unitText } from "../../src/format/unit.ts";

describe("a number", () => {
  test("that is not known is a dash, never a nought", () => {
    expect([fixed(null), grouped(null), signed(null), fixed(Number.NaN)]).toEqual(["–", "–", "–", "–"]);
  });

  test("is rounded to so many decimals, and has no minus when it rounds to nought", () => {
    expect([fixed(1.726, 2), fixed(0), fixed(-0.4), fixed(-0.004, 2), fixed(-0.6)]).toEqual([
      "1.73",
      "0",
      "0",
      "0.00",
      "-1",
    ]);
  });

  test("has as few decimals as it needs", () => {
    expect([300, 4.36, 0.1 + 0.2, 1 / 3, -0.0001].map(plain)).toEqual(["300", "4.36", "0.3", "0.333", "0"]);
  });

  test("has its thousands set apart", () => {
    expect([0, 999, 1000, 28_000, 1_234_567, -28_000].map(grouped)).toEqual([
      "0",
      "999",
      "1 000",
      "28 000",
      "1 234 567",
      "-28 000",
    ]);
  });

  test("carries its sign in a balance", () => {
    expect([1230, -200, 0, 0.3, -0.3].map(signed)).toEqual(["+1230", "-200", "0", "0", "0"]);
  });

  test("reads back as itself from any grouping", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), (n) => {
        expect(Number(grouped(n).replaceAll(" ", ""))).toBe(n);
      }),
    );
  });
});

describe("a unit", () => {
  test("reads as people write it", () => {
    expect(["mm[Hg]", "Cel", "[IU]", "mL", "[pH]"].map(unitText)).toEqual(["mmHg", "°C", "IU", "mL", ""]);
  });

  test("that has no other name stays as it is", () => {
    expect(["mmol/L", "constructor", "__proto__"].map(unitText)).toEqual([
      "mmol/L",
      "constructor",
      "__proto__",
    ]);
  });
});

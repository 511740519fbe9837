/** The size of the body. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bodyMassIndex, bodySurfaces, leanMass } from "../../src/figures/body.ts";
import { bodySurface } from "../../src/figures/body-surface.ts";

const formula = fc.constantFrom("dubois", "mosteller", "haycock");
const kilograms = fc.double({ min: 0.5, max: 250, noNaN: true });
const centimetres = fc.double({ min: 30, max: 230, noNaN: true });

describe("body surface", () => {
  test("grows with weight and with height", () => {
    fc.assert(
      fc.property(formula, kilograms, centimetres, (by, weight, height) => {
        const area = bodySurface(by, weight, height).value ?? 0;
        expect(bodySurface(by, weight * 1.01, height).value).toBeGreaterThan(area);
        expect(bodySurface(by, weight, height * 1.01).value).toBeGreaterThan(area);
      }),
    );
  });

  test("says its formula with the numbers in it", () => {
    expect(bodySurface("dubois", 78, 172).working).toBe("DuBois: 0.007184 × (78 kg)^0.425 × (172 cm)^0.725");
    expect(bodySurface("mosteller", 78, 172).working).toBe("Mosteller: √(78 kg × 172 cm / 3600)");
  });

  test("is told by all three formulas", () => {
    const areas = bodySurfaces({ weight: 80, height: 180 }).map(({ area }) => area.value?.toFixed(3));
    expect(areas).toEqual(["1.996", "2.000", "2.007"]);
  });

  test("is exactly two square metres after Mosteller for 80 kg and 180 cm", () => {
    expect(bodySurface("mosteller", 80, 180).value).toBe(2);
  });

  test("needs both weight and height", () => {
    expect(bodySurface("dubois", undefined, 172).working).toBe("no weight recorded");
    expect(bodySurface("dubois", 78, undefined)).toEqual({
      value: null,
      unit: "m2",
      working: "no height recorded",
    });
  });
});

test("the body mass index takes the height in metres", () => {
  expect(bodyMassIndex({ weight: 78, height: 172 }).value).toBeCloseTo(26.37, 2);
  expect(bodyMassIndex({}).working).toBe("no weight recorded, no height recorded");
});

describe("lean mass", () => {
  test("lies below the weight, and lower in women", () => {
    const man = leanMass({ sex: "male", weight: 160, height: 178 }).value ?? 0;
    const woman = leanMass({ sex: "female", weight: 160, height: 178 }).value ?? 0;
    expect(man).toBeLessThan(160);
    expect(woman).toBeLessThan(man);
  });

  test("is from memory, and says so", () => {
    expect(leanMass({ sex: "male", weight: 160, height: 178 }).source).toMatch(/from memory$/);
  });

  test("is not guessed without a sex", () => {
    expect(leanMass({ weight: 160, height: 178 }).working).toBe("no sex recorded");
    expect(leanMass({ sex: "unknown", weight: 160, height: 178 }).value).toBeNull();
  });
});

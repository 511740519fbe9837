/** Values between the unit that is shown and the one that is kept. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { heparinMilligrams, shownUnit, toCanonical, toShown } from "../../src/figures/conversions.ts";
import { setupFigures } from "../../src/figures/setup-figures.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { ShownUnits } from "../../src/protocol/units.ts";
import { GAS_VALUES, READINGS } from "../../src/record/quantities.ts";
import { ucum } from "../helpers/ucum.ts";

const canonical: ShownUnits = adultProtocol.shown;
const others: ShownUnits = {
  heparin: "mg",
  gasPressure: "kPa",
  glucose: "mg/dL",
  haemoglobin: "g/L",
  lactate: "mg/dL",
};

/** Quantities that may be shown in another unit, with the molar mass in g/mol where the library asks for one. */
const CONVERTED = [
  ["oxygen", "mm[Hg]", "kPa", null],
  ["carbonDioxide", "mm[Hg]", "kPa", null],
  ["glucose", "mmol/L", "mg/dL", 180.156],
  ["lactate", "mmol/L", "mg/dL", 90.08],
  ["haemoglobin", "g/dL", "g/L", null],
] as const;

const amount = fc.double({ min: 0.01, max: 1000, noNaN: true });

describe.each(CONVERTED)("%s", (quantity, kept, shown, molecularWeight) => {
  test("is shown and typed in the unit that the protocol sets", () => {
    expect(shownUnit(quantity, kept, canonical)).toBe(kept);
    expect(shownUnit(quantity, kept, others)).toBe(shown);
  });

  test("comes back as it was typed", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(kept, shown), (value, unit) => {
        expect(toShown(quantity, unit, toCanonical(quantity, unit, value)) / value).toBeCloseTo(1, 12);
      }),
    );
  });

  test("is what a public library of units makes of it", () => {
    fc.assert(
      fc.property(amount, (value) => {
        const converted = ucum.convertUnitTo(
          shown,
          value,
          kept,
          molecularWeight ? { molecularWeight } : undefined,
        );
        expect(converted.status).toBe("succeeded");
        // The library reckons a mole as 6.0221367e23, which is 8 parts in 10 million off.
        expect(toCanonical(quantity, shown, value) / (converted.toVal ?? 0)).toBeCloseTo(1, 5);
      }),
    );
  });
});

test("temperatures, arterial pressures and the rest are shown as they are kept", () => {
  for (const [name, { unit }] of Object.entries({ ...READINGS, ...GAS_VALUES })) {
    if (CONVERTED.some(([converted]) => converted === name)) continue;
    expect(shownUnit(name, unit, others)).toBe(unit);
    expect(toCanonical(name, unit, 36.6)).toBe(36.6);
  }
});

test("heparin is told in milligrams at the protocol's own strength of one", () => {
  expect(heparinMilligrams(28_000, 100)).toBe(280);
  expect(heparinMilligrams(39_200, 140)).toBe(280);
});

test("every unit the record keeps and every unit of the setup figures is one that UCUM knows", () => {
  const kept = Object.values({ ...READINGS, ...GAS_VALUES }).map(({ unit }) => unit);
  const figured = setupFigures({}, {}, { ...adultProtocol, shown: others }).map(({ unit }) => unit);
  for (const unit of new Set([...kept, ...figured, ...CONVERTED.map(([, , shown]) => shown)]))
    expect(ucum.validateUnitString(unit).status, unit).toBe("valid");
});

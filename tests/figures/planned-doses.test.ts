/** Doses before the run, with what is to be drawn up. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  crystalloidOf,
  heparinDose,
  heparinShown,
  heparinVolume,
  protaminePlanned,
  protamineVolume,
  solutionDose,
} from "../../src/figures/planned-doses.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import { SHIPPED } from "../../src/protocol/shipped.ts";

const { coagulation } = adultProtocol;
const heparin = heparinDose({ weight: 70 }, {}, coagulation);

describe("heparin", () => {
  test("is the protocol's dose by weight, with the volume to draw up", () => {
    expect(heparin).toMatchObject({ value: 28_000, unit: "[IU]", working: "400 IU/kg × 70 kg" });
    expect(heparinVolume(heparin, coagulation)).toMatchObject({
      value: 28,
      working: "28 000 IU / 1000 IU/mL",
    });
  });

  test("is the plan's dose where the plan has one", () => {
    expect(heparinDose({ weight: 70 }, { heparinPerKg: 300 }, coagulation)).toMatchObject({
      value: 21_000,
      source: "as planned",
    });
  });

  test("is shown in milligrams where the unit counts in them, with what one stands for said out loud", () => {
    const protocol = { ...adultProtocol, shown: { ...adultProtocol.shown, heparin: "mg" as const } };
    expect(heparinShown(heparin, adultProtocol)).toBe(heparin);
    expect(heparinShown(heparin, protocol)).toMatchObject({
      value: 280,
      unit: "mg",
      working: "400 IU/kg × 70 kg = 28 000 IU, at 100 IU/mg",
    });
  });

  test("is not known without a weight, and neither is what follows from it", () => {
    const unknown = heparinDose({}, {}, coagulation);
    expect(unknown.working).toBe("no weight recorded");
    expect(heparinVolume(unknown, coagulation).value).toBeNull();
    expect(protaminePlanned(unknown, coagulation)).toEqual({
      value: null,
      unit: "mg",
      working: "no weight recorded",
    });
  });
});

describe("protamine", () => {
  test("is reckoned from the planned heparin, with the volume to draw up", () => {
    const protamine = protaminePlanned(heparin, coagulation);
    expect(protamine.value).toBe(280);
    expect(protamineVolume(protamine, coagulation)).toMatchObject({
      value: 28,
      working: "280 mg / 10 mg/mL",
    });
  });

  test("never exceeds the protocol's cap, and says where it meets it", () => {
    const ratio = fc.double({ min: 0.1, max: 5, noNaN: true });
    fc.assert(
      fc.property(ratio, (value) => {
        const decided = { ...coagulation, protamineRatio: { value } };
        const { value: mg, working } = protaminePlanned(heparin, decided);
        expect(mg).toBeLessThanOrEqual(280 * 2.6 + 1e-9);
        expect(working.endsWith("(the most allowed)")).toBe(value > 2.6);
      }),
    );
  });
});

describe("arrest solution", () => {
  const perKg = {
    perKg: { value: 20, source: "from memory" },
    ceiling: { value: 1000, source: "from memory" },
  };

  test("goes by weight up to its ceiling", () => {
    expect(solutionDose(perKg, { weight: 3.4 })).toMatchObject({ value: 68, working: "20 mL/kg × 3.4 kg" });
    expect(solutionDose(perKg, { weight: 50 }).working).toBe("20 mL/kg × 50 kg");
    expect(solutionDose(perKg, { weight: 70 })).toMatchObject({
      value: 1000,
      working: "20 mL/kg × 70 kg = 1400 mL, at most 1000 mL",
    });
  });

  test("no shipped dose exceeds its ceiling at any weight", () => {
    const doses = SHIPPED.flatMap(({ solutions }) =>
      solutions.flatMap(({ first, repeat }) => [first, repeat]),
    ).filter((dose) => dose?.ceiling !== undefined);
    expect(doses.length).toBeGreaterThan(4);
    fc.assert(
      fc.property(
        fc.constantFrom(...doses),
        fc.double({ min: 0.3, max: 400, noNaN: true }),
        (dose, weight) => {
          expect(solutionDose(dose, { weight }).value).toBeLessThanOrEqual(dose?.ceiling?.value ?? 0);
        },
      ),
    );
  });

  test("of a fixed volume needs no weight", () => {
    expect(solutionDose({ fixed: { value: 300 } }, {})).toMatchObject({
      value: 300,
      working: "300 mL fixed",
    });
    expect(solutionDose(perKg, {}).working).toBe("no weight recorded");
  });

  test("that is not planned has no dose", () => {
    const once = paediatricProtocol.solutions.find(({ id }) => id === "crystalloid");
    expect(solutionDose(once?.repeat, { weight: 20 }).working).toBe("the protocol plans no such dose");
  });

  test("without a ceiling in the ratio's own words: four of blood to one is a fifth, one to four is four fifths", () => {
    const ofAThousand = SHIPPED[0]?.solutions.map((solution) =>
      crystalloidOf(solutionDose({ fixed: { value: 1000 } }, {}), solution),
    );
    expect(ofAThousand?.map(({ value }) => Math.round(value ?? 0))).toEqual([200, 111, 800, 1000]);
    expect(ofAThousand?.[2]?.working).toBe("1000 mL × 4 / (1 + 4)");
  });
});

/** Values that can hardly be meant, and what they would mean. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toCanonical } from "../../src/figures/conversions.ts";
import { plausible } from "../../src/figures/plausibility.ts";
import { WINDOWS } from "../../src/figures/plausible-windows.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";

const showing = (shown: Partial<Protocol["shown"]>): Protocol => ({
  ...adultProtocol,
  shown: { ...adultProtocol.shown, ...shown },
});
const kept = { protocol: adultProtocol };

describe("typed in another unit", () => {
  test.each([
    ["height", 1.8, "Height 1.8 cm is unlikely: in metres it would be 180 cm."],
    ["height", 5.9, "Height 5.9 cm is unlikely: in feet it would be 180 cm."],
    ["height", 1750, "Height 1750 cm is unlikely: in millimetres it would be 175 cm."],
    ["weight", 240, "Weight 240 kg is unlikely: in pounds it would be 109 kg."],
    ["weight", 3400, "Weight 3400 kg is unlikely: in grams it would be 3.4 kg."],
    ["haemoglobin", 140, "Haemoglobin 140 g/dL is unlikely: in g/L it would be 14 g/dL."],
    ["haematocrit", 0.38, "Haematocrit 0.38 % is unlikely: as a fraction it would be 38 %."],
    ["targetHaematocrit", 0.25, "Wanted haematocrit 0.25 % is unlikely: as a fraction it would be 25 %."],
    ["targetTemperature", 98.6, "Temperature 98.6 °C is unlikely: in °F it would be 37 °C."],
    ["arterialTemperature", 86, "Arterial outlet temperature 86 °C is unlikely: in °F it would be 30 °C."],
    ["glucose", 120, "Glucose 120 mmol/L is unlikely: in mg/dL it would be 6.66 mmol/L."],
    ["lactate", 27, "Lactate 27 mmol/L is unlikely: in mg/dL it would be 3 mmol/L."],
    ["oxygen", 13, "pO2 13 mmHg is unlikely: in kPa it would be 97.5 mmHg."],
    ["carbonDioxide", 5.3, "pCO2 5.3 mmHg is unlikely: in kPa it would be 39.8 mmHg."],
    ["meanPressure", 8, "Mean arterial pressure 8 mmHg is unlikely: in kPa it would be 60 mmHg."],
    ["venousSaturation", 0.75, "Venous saturation 0.75 % is unlikely: as a fraction it would be 75 %."],
    ["fullFlow", 4600, "Full flow 4600 L/min is unlikely: in mL/min it would be 4.6 L/min."],
    ["heparinPerKg", 4, "Heparin 4 IU/kg is unlikely: in mg/kg it would be 400 IU/kg."],
    ["calcium", 4.6, "Ionised calcium 4.6 mmol/L is unlikely: in mg/dL it would be 1.15 mmol/L."],
  ])("%s %s", (field, value, sentence) => {
    expect(plausible(field, value, kept)).toBe(sentence);
  });

  test.each([
    ["haemoglobin", "g/L", 14, "Haemoglobin 14 g/L is unlikely: in g/dL it would be 140 g/L."],
    ["glucose", "mg/dL", 6.2, "Glucose 6.2 mg/dL is unlikely: in mmol/L it would be 112 mg/dL."],
    ["oxygen", "kPa", 150, "pO2 150 kPa is unlikely: in mmHg it would be 20 kPa."],
    ["carbonDioxide", "kPa", 40, "pCO2 40 kPa is unlikely: in mmHg it would be 5.33 kPa."],
  ])("%s where %s is shown, %s", (field, unit, typed, sentence) => {
    const protocol = showing({ haemoglobin: "g/L", glucose: "mg/dL", gasPressure: "kPa" });
    expect(plausible(field, toCanonical(field, unit, typed), { protocol })).toBe(sentence);
  });

  test("what is wrong in the shown unit too is not offered again in that unit", () => {
    const protocol = showing({ haemoglobin: "g/L" });
    expect(plausible("haemoglobin", toCanonical("haemoglobin", "g/L", 1400), { protocol })).toBe(
      "Haemoglobin 1400 g/L is unlikely: check it.",
    );
  });

  test("what no other unit explains is to be checked", () => {
    expect(plausible("ph", 74, kept)).toBe("pH 74 is unlikely: check it.");
    expect(plausible("potassium", 44, kept)).toBe("Potassium 44 mmol/L is unlikely: check it.");
  });
});

describe("weight and height together", () => {
  test.each([
    [
      "weight",
      176,
      { height: 170 },
      "Weight 176 kg makes a body mass index of 60.9: in pounds it would be 79.8 kg.",
    ],
    [
      "height",
      69,
      { weight: 78 },
      "Height 69 cm makes a body mass index of 164: in inches it would be 175 cm.",
    ],
    [
      "weight",
      9,
      { height: 50 },
      "Weight 9 kg makes a body mass index of 36: in pounds it would be 4.08 kg.",
    ],
    ["weight", 20, { height: 180 }, "Weight 20 kg makes a body mass index of 6.17: check it."],
  ])("%s %s with %o", (field, value, other, sentence) => {
    expect(plausible(field, value, { ...kept, ...other })).toBe(sentence);
  });

  test.each([
    [3.4, 50],
    [0.9, 35],
    [12, 85],
    [78, 172],
    [120, 170],
    [140, 178],
  ])("%s kg and %s cm pass in silence", (weight, height) => {
    expect(plausible("weight", weight, { ...kept, height })).toBeNull();
    expect(plausible("height", height, { ...kept, weight })).toBeNull();
  });
});

describe("blood volume", () => {
  test.each([
    [2900, "Blood volume 2900 mL is 29 mL/kg: it is expected between 30 and 130 mL/kg."],
    [3000, null],
    [13_000, null],
    [13_100, "Blood volume 13100 mL is 131 mL/kg: it is expected between 30 and 130 mL/kg."],
  ])("%s mL in 100 kg", (ml, sentence) => {
    expect(plausible("bloodVolume", ml, { weight: 100 })).toBe(sentence);
  });

  test("is not judged without a weight", () => {
    expect(plausible("bloodVolume", 1, {})).toBeNull();
  });
});

test("a field without a window, and every value within its window, pass in silence", () => {
  expect(plausible("diagnosis", 5, kept)).toBeNull();
  for (const [field, { low, high }] of Object.entries(WINDOWS))
    for (const value of [low, (low + high) / 2, high])
      expect(plausible(field, value, kept), field).toBeNull();
});

test("any number in any field gives silence or one sentence", () => {
  fc.assert(
    fc.property(fc.constantFrom(...Object.keys(WINDOWS)), fc.double({ noNaN: true }), (field, value) => {
      const sentence = plausible(field, value, { ...kept, weight: 70, height: 170 });
      if (sentence !== null)
        expect(sentence).toMatch(/^[A-Zp].* (is unlikely|makes a body mass index of .*): .*\.$/);
    }),
  );
});

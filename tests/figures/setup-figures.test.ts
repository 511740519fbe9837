/** Everything the setup shows beside the patient and the plan. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { figureText } from "../../src/figures/figure.ts";
import type { Patient, Plan } from "../../src/figures/patient.ts";
import { setupFigures } from "../../src/figures/setup-figures.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { SHIPPED } from "../../src/protocol/shipped.ts";

/** What a person reads, by name. */
const read = (patient: Patient, plan: Plan, protocol: Protocol, primed: number | null = null) =>
  Object.fromEntries(
    setupFigures(patient, plan, protocol, primed).map((figure) => [
      figure.name,
      figureText(figure, figure.decimals),
    ]),
  );

const adult: Patient = { sex: "male", weight: 78, height: 172, haematocrit: 38, haemoglobin: 12.9 };
const newborn: Patient = { sex: "female", weight: 3.4, height: 50, haematocrit: 42 };
const heavy: Patient = { sex: "male", weight: 160, height: 178, haematocrit: 40 };

test("an adult's figures come in the order in which they are asked for", () => {
  expect(
    Object.entries(read(adult, { targetTemperature: 32, targetHaematocrit: 30 }, adultProtocol)),
  ).toEqual([
    ["body surface (DuBois)", "1.91 m²"],
    ["full flow", "4.59 L/min"],
    ["index of full flow", "2.40 L/min/m²"],
    ["flow at 32 °C", "4.20 L/min"],
    ["blood volume", "4982 mL"],
    ["blood volume by weight", "63.9 mL/kg"],
    ["prime", "1400 mL"],
    ["predicted haematocrit", "29.7 %"],
    ["haematocrit with first dose in", "28.8 %"],
    ["red cells on top, to 30 %", "71.5 mL"],
    ["red cells for prime, to 30 %", "35.8 mL"],
    ["ultrafiltrate, to 30 %", "71.5 mL"],
    ["blood loss down to 21 %", "2229 mL"],
    ["predicted haemoglobin", "10.1 g/dL"],
    ["oxygen content", "14.1 mL/dL"],
    ["oxygen delivery at full flow", "338 mL/min/m²"],
    ["flow for a delivery of 280", "3.80 L/min"],
    ["heparin", "31200 IU"],
    ["heparin to draw up", "31.2 mL"],
    ["protamine", "312 mg"],
    ["protamine to draw up", "31.2 mL"],
    ["first dose of arrest solution", "1000 mL"],
    ["crystalloid in it", "200 mL"],
    ["repeat dose", "300 mL"],
    ["body mass index", "26.4 kg/m²"],
    ["body surface (Mosteller)", "1.93 m²"],
    ["body surface (Haycock)", "1.94 m²"],
  ]);
});

test("a newborn's figures keep the decimals that matter to them", () => {
  expect(read(newborn, { targetHaematocrit: 30 }, paediatricProtocol)).toMatchObject({
    "body surface (Haycock)": "0.221 m²",
    "full flow": "0.51 L/min",
    "blood volume": "289 mL",
    prime: "310 mL",
    "predicted haematocrit": "20.3 %",
    "red cells on top, to 30 %": "194 mL",
    "heparin to draw up": "1.36 mL",
    protamine: "13.6 mg",
    "first dose of arrest solution": "68.0 mL",
    "crystalloid in it": "54.4 mL",
  });
});

describe("a heavy adult", () => {
  test("is shown lean mass and the flow on it as well", () => {
    expect(read(heavy, {}, adultProtocol)).toMatchObject({
      "full flow": "6.38 L/min",
      "lean mass": "84.3 kg",
      "full flow on lean mass": "4.86 L/min",
    });
  });

  test("has no flow on lean mass while the sex is not known", () => {
    const { sex, ...unsexed } = heavy;
    const figures = setupFigures(unsexed, {}, adultProtocol);
    expect(figures.find(({ name }) => name === "full flow on lean mass")?.working).toBe("no sex recorded");
  });

  test("is not shown it where the protocol asks for none", () => {
    expect(Object.keys(read(heavy, {}, paediatricProtocol))).not.toContain("lean mass");
  });
});

test("with nothing known, what rests on the patient is a dash that says what is missing", () => {
  const figures = setupFigures({}, {}, adultProtocol);
  const unknown = figures.filter(({ value }) => value === null);
  expect(figures.filter(({ value }) => value !== null).map(({ name }) => name)).toEqual([
    "prime",
    "first dose of arrest solution",
    "crystalloid in it",
    "repeat dose",
  ]);
  for (const figure of unknown) {
    expect(figureText(figure, figure.decimals)).toMatch(/^– /);
    expect(figure.working).toMatch(/^no (weight|height|sex|haematocrit) recorded/);
  }
});

test("the prime recorded goes before the prime planned", () => {
  const planned = read(adult, {}, adultProtocol);
  const recorded = read(adult, {}, adultProtocol, 900);
  expect([planned.prime, recorded.prime]).toEqual(["1400 mL", "900 mL"]);
  expect([planned["predicted haematocrit"], recorded["predicted haematocrit"]]).toEqual(["29.7 %", "32.2 %"]);
});

test("red cells planned in the prime raise the predicted haematocrit", () => {
  const prime = [
    { fluid: "crystalloid", ml: 150 },
    { fluid: "red-cells", ml: 200 },
  ];
  expect(read(newborn, { prime }, paediatricProtocol)).toMatchObject({
    prime: "350 mL",
    "predicted haematocrit": "37.8 %",
    "red cells on top, to 25 %": "0 mL",
  });
});

test("tubing is shown where its length is planned", () => {
  const tubing = [{ id: "bore-3-8", metres: 1.2 }];
  expect(read(adult, { tubing }, adultProtocol)["tubing holds"]).toBe("85.5 mL");
  expect(read(adult, {}, adultProtocol)["tubing holds"]).toBeUndefined();
});

test("without a wanted haematocrit the protocol's floor is meant", () => {
  expect(read(heavy, {}, adultProtocol)["red cells on top, to 21 %"]).toBe("0 mL");
});

test("every figure that is known says how it was made, for any patient", () => {
  const maybe = (low: number, high: number) =>
    fc.option(fc.double({ min: low, max: high, noNaN: true }), { nil: undefined });
  const anyPatient = fc.record({
    sex: fc.constantFrom("male", "female", "unknown", undefined),
    weight: maybe(0.3, 400),
    height: maybe(1, 260),
    haematocrit: maybe(0, 90),
    haemoglobin: maybe(0, 30),
  });
  const anyPlan = fc.record({ targetTemperature: maybe(5, 42), targetHaematocrit: maybe(5, 70) });
  fc.assert(
    fc.property(anyPatient, anyPlan, fc.constantFrom(...SHIPPED), (patient, plan, protocol) => {
      const told = JSON.parse(JSON.stringify(patient)) as Patient;
      const planned = JSON.parse(JSON.stringify(plan)) as Plan;
      for (const { name, value, working } of setupFigures(told, planned, protocol)) {
        expect(working, name).not.toMatch(/NaN|undefined|Infinity|^$/);
        if (value !== null) expect(value, name).toBeGreaterThanOrEqual(0);
      }
    }),
  );
});

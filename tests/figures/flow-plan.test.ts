/** Flow before the run, and what flow makes of pressure and time. */
import { describe, expect, test } from "vitest";
import { type Figure, known, missing } from "../../src/figures/figure.ts";
import { flowAtIndex, flowAtTemperature, flowIndexOf } from "../../src/figures/flow-plan.ts";
import { urinePerKgPerHour } from "../../src/figures/urine.ts";
import { systemicResistance, systemicResistanceIndex } from "../../src/figures/vascular.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";

const surface = known(1.8, "m2", "given");
const table = adultProtocol.body.flowByTemperature;
const litres = (value: number): Figure => known(value, "L/min", "given");
const mmHg = (value: number): Figure => known(value, "mm[Hg]", "given");

describe("flow by temperature", () => {
  test.each([
    [37, 2.4],
    [34, 2.2],
    [34.1, 2.4],
    [30, 2.0],
    [20, 1.2],
    [18, 1.2],
  ])("a step includes its upper bound: %s °C", (celsius, index) => {
    expect(flowAtTemperature(celsius, surface, table).value).toBeCloseTo(index * 1.8, 9);
  });

  test("says the temperature it is for", () => {
    expect(flowAtTemperature(32, surface, table)).toMatchObject({
      working: "at 32 °C 2.2 L/min/m² × 1.8 m²",
      source: "from memory",
    });
  });

  test("is not known without a temperature, a table or a surface", () => {
    expect(flowAtTemperature(undefined, surface, table).working).toBe("no temperature planned");
    expect(flowAtTemperature(32, surface, paediatricProtocol.body.flowByTemperature).working).toBe(
      "no table of the protocol gives an index for 32 °C",
    );
    expect(flowAtTemperature(32, missing("m2", "no height recorded"), table).working).toBe(
      "no height recorded",
    );
  });
});

test("an index makes a flow, and that flow makes the index", () => {
  const flow = flowAtIndex({ value: 2.4, source: "a trial" }, surface);
  expect(flow.source).toBe("a trial");
  expect(flowIndexOf(flow, surface).value).toBeCloseTo(2.4, 12);
});

describe("vascular resistance", () => {
  test("rises as the flow falls, and has no value for a pump that stands still", () => {
    expect(systemicResistance(mmHg(60), mmHg(5), litres(4.4)).value).toBeCloseTo(1000, 9);
    expect(systemicResistance(mmHg(60), mmHg(5), litres(2.2)).value).toBeCloseTo(2000, 9);
    expect(systemicResistance(mmHg(60), mmHg(5), litres(0))).toMatchObject({
      value: null,
      working: "no flow",
    });
  });

  test("is multiplied, not divided, by the surface", () => {
    const resistance = systemicResistance(mmHg(60), mmHg(5), litres(4.4));
    expect(systemicResistanceIndex(resistance, surface)).toMatchObject({
      unit: "dyn.s.m2/cm5",
      working: "1000 dyn·s·cm⁻⁵ × 1.8 m²",
    });
  });

  test("is not guessed without the venous pressure", () => {
    const unread = missing("mm[Hg]", "no central venous pressure recorded");
    expect(systemicResistance(mmHg(60), unread, litres(4.4)).value).toBeNull();
  });
});

test("urine is told by kilogram and hour, once some time has passed", () => {
  const rate = (ml: number, hours: number) =>
    urinePerKgPerHour(known(ml, "mL", "given"), known(80, "kg", "given"), known(hours, "h", "given"));
  expect(rate(160, 2)).toMatchObject({ value: 1, working: "160 mL / 80 kg / 2.00 h" });
  expect(rate(0, 1).value).toBe(0);
  expect(rate(0, 0)).toMatchObject({ value: null, working: "no time has passed" });
});

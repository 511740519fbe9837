/** The figures of the live panel: from the latest readings and gases, never from stale ones. */
import { describe, expect, test } from "vitest";
import { liveFigures } from "../../src/figures/live-figures.ts";
import { deliveryOverTime } from "../../src/figures/oxygen-over-time.ts";
import { runAt } from "../helpers/typed-case.ts";
import { byMosteller, gas, readings, type Step, told, twoSquareMetres } from "./told-case.ts";

const live = (steps: readonly Step[], clock: string) => liveFigures(runAt(told(steps, byMosteller), clock));

const arterial = gas("09:05", { haemoglobin: 9, saturation: 99, oxygen: 250 });
const venous = gas("09:05", { saturation: 75, oxygen: 40 }, "venous");
const pump = readings("09:10", { flow: 4.8, meanPressure: 70, centralVenousPressure: 5 });
const run: readonly Step[] = [twoSquareMetres, "09:00 b", arterial, venous, pump];

describe("oxygen", () => {
  // CHECK: Hb 9, 99 %, 250 mmHg, venous 75 % and 40 mmHg, 4.8 L/min, 2.0 m², 1.34 and 0.003,
  // computed from the published formula (content × flow: RCEM Learning; Fick from memory).
  test("delivery, uptake and extraction are those of the worked vector", () => {
    const { flowIndex, delivery, uptake, extraction } = live(run, "09:15");
    expect(flowIndex.value).toBeCloseTo(2.4, 9);
    expect(delivery.value).toBeCloseTo(304.55, 2);
    expect(uptake.value).toBeCloseTo(84.59, 2);
    expect(extraction.value).toBeCloseTo(27.774, 3);
  });

  test("delivery says its constants and their sources", () => {
    const { delivery } = live(run, "09:15");
    expect(delivery.working).toContain("1.34 × 9 g/dL × 99 % + 0.003 × 250 mmHg");
    expect(delivery.source).toMatch(/RCEM/);
  });

  test("a stale part is named and not used", () => {
    expect(live(run, "09:30").delivery.value).not.toBeNull();
    const { delivery, flowIndex } = live(run, "09:31");
    expect([delivery.value, flowIndex.value]).toEqual([null, null]);
    expect(delivery.working).toBe("pump flow is too old (21 min)");
    const later = live([...run, readings("09:51", { flow: 4.8 })], "09:51").delivery;
    expect(later.working).toContain("haemoglobin is too old (46 min)");
  });

  test("a part that was never recorded is named", () => {
    const without = live([twoSquareMetres, "09:00 b", pump], "09:15").delivery.working;
    expect(without).toContain("no haemoglobin recorded, no arterial saturation recorded, no arterial pO2");
    expect(live(["09:00 b", arterial, pump], "09:15").flowIndex.working).toBe("no weight recorded");
  });

  test("with the venous saturation in line the dissolved part is left out, and said to be", () => {
    const inLine = readings("09:10", { flow: 4.8, venousSaturation: 75 });
    const { extraction } = live([twoSquareMetres, "09:00 b", arterial, inLine], "09:15");
    expect(extraction.value).toBeCloseTo(28.72, 2);
    expect(extraction.working).toContain("dissolved left out: no venous pO2 recorded");
  });
});

describe("resistance", () => {
  test("is 80 × (70 − 5) / 4.8 (computed from the published formula, foxlinton.org)", () => {
    expect(live(run, "09:15").resistance.value).toBeCloseTo(1083.3, 1);
  });

  test("indexed, is that times the surface of 2 m²", () => {
    expect(live(run, "09:15").resistanceIndex.value).toBeCloseTo(2166.7, 1);
  });

  test("is not there without flow, nor with a venous pressure that nobody read", () => {
    const still = readings("09:12", { flow: 0, meanPressure: 70, centralVenousPressure: 5 });
    const { resistance, resistanceIndex } = live([...run, still], "09:15");
    for (const one of [resistance, resistanceIndex])
      expect(one).toMatchObject({ value: null, working: "no flow" });
    const half = readings("09:10", { flow: 4.8, meanPressure: 70 });
    expect(live(["09:00 b", half], "09:15").resistance.working).toBe("no central venous pressure recorded");
  });
});

describe("the time since heparin", () => {
  test("is since the last", () => {
    expect(live(["08:40 h 28000", "09:10 h 5000"], "09:20").heparinAge.value).toBe(600);
    expect(live([], "09:20").heparinAge.value).toBeNull();
  });
});

describe("delivery over the run", () => {
  const pieces = (steps: readonly Step[]) =>
    deliveryOverTime(runAt(told([twoSquareMetres, ...steps], byMosteller), "12:00").course).map(
      ({ from, to, value }) => [(from - T0) / 60_000, (to - T0) / 60_000, Math.round(value)],
    );
  const T0 = Date.parse("2026-03-04T09:00:00+01:00");
  const thin = gas("09:20", { haemoglobin: 7, saturation: 99, oxygen: 250 });

  test("begins with the first flow and gas, changes with each of them, and ends when one is too old", () => {
    const steps = ["09:00 b", arterial, pump, thin, readings("09:25", { flow: 5.2 })];
    expect(pieces(steps)).toEqual([
      [10, 20, 305],
      [20, 25, 241],
      [25, 45, 261],
    ]);
  });

  test("counts minutes and area below the threshold on bypass only", () => {
    const steps = ["09:00 b", arterial, pump, thin, "09:25 b"];
    const { deliveryBelowMinutes, deliveryBelowArea, deliveryLowest } = live(
      [twoSquareMetres, ...steps],
      "10:00",
    );
    expect(deliveryBelowMinutes.value).toBe(5);
    expect(deliveryLowest.value).toBeCloseTo(240.87, 2);
    expect(deliveryBelowArea.value).toBeCloseTo((280 - 240.8688) * 5, 3);
    expect(deliveryBelowMinutes.working).toContain("15 of 25 min on bypass assessed");
  });

  test("leaves out circulatory arrest and cerebral perfusion", () => {
    const steps = ["09:00 b", arterial, pump, thin, "09:21 m ca", "09:24 m c", "09:25 b"] as const;
    expect(live([twoSquareMetres, ...steps], "10:00").deliveryBelowMinutes.value).toBe(2);
  });

  test("without weight and height there is none", () => {
    const { deliveryBelowMinutes } = live(["09:00 b", arterial, pump], "09:20");
    expect(deliveryBelowMinutes).toMatchObject({
      value: null,
      working: "not assessed: 0 of 20 min on bypass assessed",
    });
  });
});

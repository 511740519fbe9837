/** Published quality indicators: met only where there is a value that meets them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { indicatorsOf } from "../../src/figures/indicators.ts";
import { readRun } from "../../src/figures/run.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { runAt } from "../helpers/typed-case.ts";
import { byMosteller, gas, readings, type Step, told, twoSquareMetres } from "./told-case.ts";

function indicator(id: string, ...steps: Step[]) {
  const file = told([twoSquareMetres, "09:00 b", ...steps, "10:00 b"], byMosteller);
  const found = indicatorsOf(runAt(file, "11:00")).find((one) => one.id === id);
  if (!found) throw new Error(`no indicator ${id}`);
  return found;
}

const glucose = (...values: number[]) => values.map((value, i) => gas(`09:${10 + i}`, { glucose: value }));
const outlet = (value: number) => readings("09:10", { arterialTemperature: value });
const carbonDioxide = (value: number) => gas("09:10", { carbonDioxide: value });

// Limits as published: Baker RA et al. J Extra Corpor Technol 2012;44:26–33, read on the page.
describe("within its published limits, both included", () => {
  test.each<[string, Step[], string]>([
    ["glucose", glucose(4, 10), "met"],
    ["glucose", glucose(4, 10.1), "not met"],
    ["glucose", glucose(3.9, 6), "not met"],
    ["outlet", [outlet(37)], "met"],
    ["outlet", [outlet(37.1)], "not met"],
    ["carbon-dioxide", [carbonDioxide(35), gas("09:20", { carbonDioxide: 45 })], "met"],
    ["carbon-dioxide", [carbonDioxide(34)], "not met"],
    ["carbon-dioxide", [carbonDioxide(46)], "not met"],
  ])("%s %#", (id, steps, verdict) => {
    expect(indicator(id, ...steps).verdict).toBe(verdict);
  });

  test("one value outside misses it, and the share of the others is shown", () => {
    const { verdict, value } = indicator("glucose", ...glucose(5, 6, 7, 11));
    expect([verdict, value.value]).toEqual(["not met", 75]);
    expect(value.working).toBe("3 of 4 values within (5 to 11)");
  });

  test("a venous sample says nothing of PaCO2", () => {
    expect(indicator("carbon-dioxide", gas("09:10", { carbonDioxide: 50 }, "venous")).verdict).toBe(
      "not assessable",
    );
  });
});

describe("oxygen delivery", () => {
  const flows = (clock: string, flow: number) => readings(clock, { flow });
  const blood = gas("09:00", { haemoglobin: 9, saturation: 99, oxygen: 250 });

  test("is met where it never lay below 270 for at least half of the time", () => {
    const steps = [blood, flows("09:00", 4.8), flows("09:20", 4.8)];
    expect(indicator("delivery-lowest", ...steps)).toMatchObject({
      verdict: "met",
      value: { unit: "mL/min/m2" },
    });
  });

  test("is not met after one low value, however short", () => {
    const steps = [blood, flows("09:00", 4.8), flows("09:10", 4.2), flows("09:11", 4.8)];
    expect(indicator("delivery-lowest", ...steps).verdict).toBe("not met");
    expect(indicator("delivery-minutes", ...steps).value.value).toBe(1);
  });

  test("is not assessable where values held for less than half of the time", () => {
    expect(indicator("delivery-lowest", blood, flows("09:00", 4.8)).verdict).toBe("not assessable");
  });
});

test("every ACT on bypass counts, at the target as met", () => {
  const met = indicator("act", "08:59 a 300", "09:10 a 480", "09:40 a 500", "10:30 a 120");
  expect([met.verdict, met.value.value]).toEqual(["met", 100]);
  const missed = indicator("act", "09:10 a 479", "09:40 a 500");
  expect([missed.verdict, missed.value.value]).toEqual(["not met", 50]);
});

test("minutes below count only as long as a reading holds", () => {
  const steps = [readings("09:10", { meanPressure: 49, venousSaturation: 59 })];
  expect(indicator("pressure-below", ...steps).value).toMatchObject({ value: 20, unit: "min" });
  expect(indicator("venous-saturation-below", ...steps).value.value).toBe(20);
  expect(indicator("pressure-below", readings("09:10", { meanPressure: 50 })).value.value).toBe(0);
});

test("extremes are shown without a verdict", () => {
  const steps = [
    gas("09:10", { haematocrit: 24, lactate: 1.1 }),
    gas("09:40", { haematocrit: 22, lactate: 2.4 }),
  ];
  expect(indicator("haematocrit-lowest", ...steps)).toMatchObject({ verdict: "shown", value: { value: 22 } });
  expect(indicator("lactate", ...steps)).toMatchObject({ verdict: "shown", value: { value: 2.4 } });
  expect(indicator("urine", "09:30 u 20").value.value).toBe(0.5);
});

test("what was measured before or after bypass does not count", () => {
  const file = told(["08:30 a 118", "09:00 b", "10:00 b", gas("10:10", { glucose: 14, lactate: 9 })]);
  const verdicts = indicatorsOf(runAt(file, "11:00")).map(({ verdict }) => verdict);
  expect(new Set(verdicts)).toEqual(new Set(["not assessable"]));
});

test("a case without a value is not assessable in anything, and never a pass", () => {
  for (const steps of [[], ["09:00 b"], ["09:00 b", "10:00 b"]])
    for (const { id, verdict, value } of indicatorsOf(runAt(told(steps), "11:00")))
      expect([id, verdict, value.value]).toEqual([id, "not assessable", null]);
});

test("in any run an indicator has a verdict only with a value, and always a source", () => {
  fc.assert(
    fc.property(anyRun(40), (typing) => {
      play(typing, (file, now) => {
        for (const { verdict, value, source } of indicatorsOf(readRun(file, now.ms))) {
          if (value.value === null) expect(verdict).toBe("not assessable");
          expect(source).not.toBe("");
        }
      });
    }),
    { numRuns: 30 },
  );
});

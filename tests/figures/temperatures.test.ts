/** Cooling and warming. */
import { describe, expect, test } from "vitest";
import { gradientOf, minutesToTarget, warmingRate } from "../../src/figures/temperatures.ts";
import { runAt } from "../helpers/typed-case.ts";
import { readings, type Step, told } from "./told-case.ts";

const at = (clock: string, ...steps: Step[]) => runAt(told(["09:00 b", ...steps]), clock);
const naso = (clock: string, nasopharyngealTemperature: number) =>
  readings(clock, { nasopharyngealTemperature });

describe("the gradient", () => {
  test.each([
    [26, 36.5, "cooling", 10.5],
    [36, 32, "warming", 4],
    [34, 34, "level", 0],
  ])(
    "of %s arterial and %s venous is %s by %s",
    (arterialTemperature, venousTemperature, direction, value) => {
      const gradient = gradientOf(at("09:20", readings("09:15", { arterialTemperature, venousTemperature })));
      expect(gradient.direction).toBe(direction);
      expect(gradient.figure.value).toBeCloseTo(value, 9);
    },
  );

  test("needs both bloods, recent enough", () => {
    const arterial = readings("09:05", { arterialTemperature: 30 });
    const venous = readings("09:20", { venousTemperature: 33 });
    expect(gradientOf(at("09:20", arterial)).figure.working).toBe("no venous blood temperature recorded");
    expect(gradientOf(at("09:25", arterial, venous)).figure.value).toBe(3);
    expect(gradientOf(at("09:26", arterial, venous)).figure.value).toBeNull();
  });
});

describe("the rate of warming", () => {
  test("is from two readings of one site", () => {
    expect(warmingRate(at("09:21", naso("09:10", 30), naso("09:20", 34))).value).toBeCloseTo(0.4, 9);
    expect(warmingRate(at("09:21", naso("09:10", 36), naso("09:20", 34))).value).toBeCloseTo(-0.2, 9);
  });

  test("is never from one", () => {
    expect(warmingRate(at("09:21", naso("09:20", 34)))).toMatchObject({
      value: null,
      working: "needs two readings of nasopharyngeal temperature 1 to 20 min apart",
    });
  });

  test("wants the two at least a minute apart, and no further than a reading is relied on", () => {
    const last = naso("09:30", 34);
    expect(warmingRate(at("09:30", naso("09:29:01", 33.5), last)).value).toBeNull();
    expect(warmingRate(at("09:30", naso("09:29", 33.5), last)).value).toBeCloseTo(0.5, 9);
    expect(warmingRate(at("09:30", naso("09:10", 30), last)).value).toBeCloseTo(0.2, 9);
    expect(warmingRate(at("09:30", naso("09:09", 30), last)).value).toBeNull();
  });

  test("takes the next site where the first is not read", () => {
    const bladder = [
      readings("09:10", { bladderTemperature: 33 }),
      readings("09:20", { bladderTemperature: 34 }),
    ];
    expect(warmingRate(at("09:21", ...bladder)).working).toBe(
      "bladder temperature (34.0 − 33.0) °C / 10.0 min",
    );
  });
});

describe("the minutes to the temperature ordered", () => {
  const warming = [naso("09:10", 28), naso("09:20", 33)] as const;

  // 28 to 36.5 °C at 0.5 °C/min takes 17 minutes: computed from the published limit (Engelman 2015).
  test("follow from the rate, and count down from the last reading", () => {
    expect(minutesToTarget(at("09:20", "09:05 t 36.5", ...warming)).value).toBeCloseTo(7, 9);
    expect(minutesToTarget(at("09:24", "09:05 t 36.5", ...warming)).value).toBeCloseTo(3, 9);
    expect(minutesToTarget(at("09:39", "09:05 t 36.5", ...warming)).value).toBe(0);
  });

  test("are not there without an order, without a rate, or when it goes the other way", () => {
    expect(minutesToTarget(at("09:20", ...warming)).working).toBe("no temperature ordered");
    expect(minutesToTarget(at("09:20", "09:05 t 36", naso("09:10", 28))).working).toContain("two readings");
    expect(minutesToTarget(at("09:20", "09:05 t 20", ...warming)).working).toBe(
      "nasopharyngeal temperature does not move towards 20 °C",
    );
  });

  test("are nought at the temperature ordered", () => {
    expect(minutesToTarget(at("09:20", "09:05 t 33", ...warming)).value).toBe(0);
  });
});

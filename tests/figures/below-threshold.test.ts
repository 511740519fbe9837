/** Minutes and area below a threshold. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Below, belowFigures, belowThreshold, stepHold } from "../../src/figures/below-threshold.ts";
import type { Stretch } from "../../src/figures/perfused.ts";

const MINUTE = 60_000;

type Values = readonly (readonly [minute: number, value: number])[];

/** Values that hold for so many minutes at the most, between two minutes of a run. */
function below(values: Values, threshold: number, end: number, hold = 1000, from = 0): Below {
  const samples = values.map(([minute, value]) => ({
    at: minute * MINUTE,
    value,
    until: (minute + hold) * MINUTE,
  }));
  const stretch = { from: from * MINUTE, to: end * MINUTE };
  return belowThreshold(stepHold(samples), threshold, [stretch], end * MINUTE);
}

describe("the published area, computed by step-hold (definition: Mukaida 2019; values computed from it)", () => {
  const short: Values = [
    [0, 300],
    [1, 270],
    [2, 260],
    [3, 280],
    [4, 290],
  ];
  const long: Values = [
    [0, 310],
    [5, 285],
    [10, 270],
    [15, 250],
    [20, 268],
    [25, 282],
    [30, 300],
  ];

  test.each<[string, Values, number, number, number, number]>([
    ["five minutes under 280", short, 5, 280, 30, 2],
    ["half an hour under 272", long, 30, 272, 140, 15],
    ["half an hour under 280", long, 30, 280, 260, 15],
    ["half an hour under 300", long, 30, 300, 725, 25],
  ])("%s", (_, values, end, threshold, area, minutes) => {
    const found = below(values, threshold, end);
    expect([found.area, found.minutes, found.notAssessed]).toEqual([area, minutes, 0]);
  });
});

describe("a value", () => {
  test("at the threshold is not below it", () => {
    expect(below([[0, 280]], 280, 10)).toMatchObject({ minutes: 0, area: 0, lowest: 280, assessed: 10 });
    expect(below([[0, 279.9]], 280, 10).minutes).toBe(10);
  });

  test("holds no longer than it is relied on, and the gap after it is not assessed", () => {
    const found = below(
      [
        [0, 250],
        [40, 300],
      ],
      280,
      60,
      20,
    );
    expect(found).toEqual({ minutes: 20, area: 600, lowest: 250, assessed: 40, notAssessed: 20 });
  });

  test("holds until the next where that comes sooner", () => {
    expect(
      below(
        [
          [0, 250],
          [5, 300],
        ],
        280,
        60,
        20,
      ),
    ).toMatchObject({ minutes: 5, assessed: 25 });
  });

  test("counts only where it lies within the time on bypass", () => {
    const samples = [{ at: 0, value: 250, until: 60 * MINUTE }];
    const on: Stretch[] = [
      { from: 10 * MINUTE, to: 20 * MINUTE },
      { from: 30 * MINUTE, to: null },
    ];
    const found = belowThreshold(stepHold(samples), 280, on, 45 * MINUTE);
    expect([found.minutes, found.assessed, found.notAssessed]).toEqual([25, 25, 0]);
  });
});

describe("as figures", () => {
  test("a run without a value is not assessed, and has no minutes instead of none", () => {
    const { minutes, area, lowest } = belowFigures(below([], 280, 30), 280, "mL/min/m2", "mL/m2");
    expect([minutes.value, area.value, lowest.value]).toEqual([null, null, null]);
    expect(minutes.working).toBe("not assessed: 0 of 30 min on bypass assessed");
  });

  test("they say how much of the time was assessed", () => {
    const { minutes, area } = belowFigures(below([[0, 250]], 280, 30, 20), 280, "mL/min/m2", "mL/m2");
    expect([minutes.value, area.value]).toEqual([20, 600]);
    expect(minutes.working).toContain("20 of 30 min on bypass assessed");
  });
});

describe("for any series", () => {
  const series = fc
    .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 120 }), fc.integer({ min: 100, max: 400 })), {
      selector: ([minute]) => minute,
      maxLength: 30,
    })
    .map((values) => values.toSorted(([a], [b]) => a - b));
  const hold = fc.integer({ min: 1, max: 30 });
  const threshold = fc.integer({ min: 150, max: 350 });

  test("nothing is negative, and the time is all accounted for", () => {
    fc.assert(
      fc.property(series, threshold, hold, (values, limit, most) => {
        const { minutes, area, assessed, notAssessed } = below(values, limit, 120, most);
        expect(Math.min(minutes, area, assessed, notAssessed)).toBeGreaterThanOrEqual(0);
        expect(minutes).toBeLessThanOrEqual(assessed);
        expect(assessed + notAssessed).toBeCloseTo(120, 9);
      }),
    );
  });

  test("two parts of a run add up to the whole", () => {
    fc.assert(
      fc.property(series, threshold, hold, fc.integer({ min: 1, max: 119 }), (values, limit, most, cut) => {
        const whole = below(values, limit, 120, most);
        const parts = [below(values, limit, cut, most), below(values, limit, 120, most, cut)] as const;
        for (const part of ["minutes", "area", "assessed", "notAssessed"] as const)
          expect(parts[0][part] + parts[1][part]).toBeCloseTo(whole[part], 9);
      }),
    );
  });

  test("a higher threshold has no less below it", () => {
    fc.assert(
      fc.property(series, threshold, hold, (values, limit, most) => {
        const [low, high] = [below(values, limit, 120, most), below(values, limit + 10, 120, most)];
        expect(high.area).toBeGreaterThanOrEqual(low.area);
        expect(high.minutes).toBeGreaterThanOrEqual(low.minutes);
      }),
    );
  });
});

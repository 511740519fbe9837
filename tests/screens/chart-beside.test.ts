// What stands beside a small chart: its scale, its clock times, and the marks of spans and doses.

import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { scaleFor, scaleText, timeRow, type Window } from "../../src/screens/chart-axis.ts";
import type { Look } from "../../src/screens/chart-dots.ts";
import { marksRow } from "../../src/screens/chart-marks.ts";

const MINUTE = 60_000;
const TEN = Date.parse("2026-03-04T10:00:00Z");
const HOUR: Window = { from: TEN, to: TEN + 60 * MINUTE };
const looks = fc.constantFrom<Look>("braille", "ascii");

describe("beside the chart", () => {
  test("an hour has a clock time every ten minutes, or fewer where there is less room", () => {
    expect(timeRow(HOUR, 60, 61)).toBe("11:00     11:10     11:20     11:30     11:40     11:50      ");
    expect(timeRow(HOUR, 60, 31)).toBe("11:00          11:30           ");
  });

  test("the clamp is drawn over bypass, and a dose over both", () => {
    const marks = {
      bars: [
        { sign: "bypass", from: TEN, to: null },
        { sign: "clamp", from: TEN + 20 * MINUTE, to: TEN + 40 * MINUTE },
      ],
      points: [{ sign: "dose", at: TEN + 30 * MINUTE }],
    } as const;
    expect(marksRow(marks, HOUR, 13, "ascii")).toBe("----==v==----");
    expect(marksRow(marks, HOUR, 13, "braille")).toBe("────━━▾━━────");
  });

  test("what lies outside the window leaves no mark", () => {
    const points = [{ sign: "dose", at: TEN - 1 } as const];
    expect(
      marksRow({ bars: [{ sign: "clamp", from: TEN - 9, to: TEN - 1 }], points }, HOUR, 5, "ascii"),
    ).toBe("     ");
  });

  test("one value makes a scale as high as asked, not below nought", () => {
    expect(scaleFor([60], 20)).toEqual({ low: 50, high: 70, decimals: 0 });
    expect(scaleFor([0.1], 2)).toMatchObject({ low: 0, high: 2 });
    expect(scaleFor([], 4)).toMatchObject({ low: 0, high: 4 });
  });
});

describe("beside whatever is charted", () => {
  test("a scale holds every value, ends on numbers that its decimals tell whole, and is as high as asked", () => {
    const values = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(values, fc.constantFrom(0.2, 1, 4, 10, 100, 500), (all, atLeast) => {
        const scale = scaleFor(all, atLeast);
        for (const value of all) {
          expect(value).toBeGreaterThanOrEqual(scale.low - 1e-6);
          expect(value).toBeLessThanOrEqual(scale.high + 1e-6);
        }
        for (const end of [scale.low, scale.high]) expect(Number(scaleText(end, scale))).toBeCloseTo(end, 6);
        expect(scale.high - scale.low).toBeGreaterThanOrEqual(atLeast - 1e-6);
      }),
      { examples: [[[4000.0000023151456, -0.0000016848546238179551, 0], 0.2]] },
    );
  });

  test("clock times stand whole under their moments", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 1, max: 3000 }),
        fc.integer({ min: -720, max: 720 }),
        (width, minutes, offset) => {
          const row = timeRow({ from: TEN, to: TEN + minutes * MINUTE }, offset, width);
          expect(row).toHaveLength(width);
          for (const word of row.split(/\s+/).filter(Boolean)) expect(word).toMatch(/^\d\d:\d\d$/);
        },
      ),
    );
  });

  test("marks fill one row of the same width", () => {
    const times = fc.integer({ min: -100, max: 200 }).map((minutes) => TEN + minutes * MINUTE);
    const bar = fc.record({
      sign: fc.constantFrom("bypass" as const, "clamp" as const),
      from: times,
      to: fc.option(times),
    });
    const dose = fc.record({ sign: fc.constant("dose" as const), at: times });
    fc.assert(
      fc.property(
        fc.array(bar),
        fc.array(dose),
        fc.integer({ min: 0, max: 90 }),
        looks,
        (bars, points, width, look) => {
          expect(stringWidth(marksRow({ bars, points }, HOUR, width, look))).toBe(width);
        },
      ),
    );
  });
});

// Small charts: what they show of values, and that they keep to the space they are given.

import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import type { TrendPoint } from "../../src/figures/trends.ts";
import { type Chart, chartRows, gutterFor } from "../../src/screens/chart.ts";
import { scaleFor, type Window } from "../../src/screens/chart-axis.ts";
import type { Look } from "../../src/screens/chart-dots.ts";
import { signsText } from "../../src/screens/chart-marks.ts";

const MINUTE = 60_000;
const TEN = Date.parse("2026-03-04T10:00:00Z");
const HOUR: Window = { from: TEN, to: TEN + 60 * MINUTE };

/** A value so many minutes after ten, relied on for twenty. */
const point = (minutes: number, value: number, hold = 20): TrendPoint => ({
  at: TEN + minutes * MINUTE,
  value,
  until: TEN + (minutes + hold) * MINUTE,
});

const chart = (points: readonly TrendPoint[], changes: Partial<Chart> = {}): Chart => ({
  lines: [{ sign: "", points }],
  limits: [],
  scale: { low: 0, high: 10, decimals: 0 },
  window: HOUR,
  look: "ascii",
  stepped: false,
  cursor: null,
  ...changes,
});

/** The plot alone, without numbers beside it. */
const plot = (one: Chart, width: number, height: number) => chartRows(one, width, height, 0);

describe("a chart", () => {
  test("joins values that come before the one before them is too old", () => {
    expect(plot(chart([point(0, 0), point(20, 5), point(40, 10)]), 13, 3)).toEqual([
      "      .-o    ",
      "   .-'       ",
      ".-'          ",
    ]);
  });

  test("does not bridge a gap that is longer than a value is relied on", () => {
    const [row] = plot(chart([point(0, 5), point(20, 5), point(41, 5), point(60, 5)]), 61, 1);
    expect(row?.slice(1, 20).trim()).not.toBe("");
    expect(row?.slice(21, 41).trim()).toBe("");
    expect(row?.slice(42, 60).trim()).not.toBe("");
  });

  test("joins at the last moment of reliance, and not a millisecond later", () => {
    const first = point(0, 5);
    const at = (ms: number) =>
      plot(chart([first, { at: first.until + ms, value: 5, until: HOUR.to }]), 61, 1);
    expect(at(0)[0]?.slice(5, 15).trim()).not.toBe("");
    expect(at(1)[0]?.slice(5, 15).trim()).toBe("");
  });

  test("shows a value alone as a mark", () => {
    expect(plot(chart([point(30, 5)]), 7, 1)).toEqual(["   o   "]);
    expect(plot(chart([point(30, 5)], { look: "braille" }), 7, 1)).toEqual(["   •   "]);
  });

  test("puts the letter of a line where each of its stretches ends", () => {
    const lines = [{ sign: "a", points: [point(0, 5), point(10, 5), point(50, 5)] }];
    const [row] = plot(chart([], { lines }), 61, 1);
    expect([...(row ?? "")].flatMap((sign, place) => (sign === "a" ? [place] : []))).toEqual([10, 50]);
  });

  test("holds a stepped value until the next, or until it is too old", () => {
    const stepped = chart([point(0, 9), point(20, 1, 10)], { stepped: true });
    const [top, foot] = plot(stepped, 61, 2);
    expect(top?.trimEnd()).toHaveLength(21);
    expect(foot?.trimEnd()).toHaveLength(31);
  });

  test("shows the part of a line that runs in from outside the window", () => {
    const [row] = plot(chart([point(-10, 5), point(10, 5)]), 61, 1);
    expect(row?.slice(0, 10).trim()).not.toBe("");
  });

  test("draws a limit only where no line runs, and the cursor over the limit", () => {
    const rows = plot(chart([point(30, 1)], { limits: [9], cursor: HOUR.from }), 7, 2);
    expect(rows).toEqual(["!~~~~~~", "!  o   "]);
  });

  test("has the ends of its scale beside it, and its middle where that is a round number", () => {
    const rows = chartRows(chart([]), 8, 5, 3);
    expect(rows.map((row) => row.slice(0, 3))).toEqual(["10|", "  |", " 5|", "  |", " 0|"]);
  });

  test("leaves its numbers out whole where they do not fit", () => {
    const scale = { low: 0, high: 1000, decimals: 0 };
    expect(chartRows(chart([], { scale }), 4, 2, 3)).toEqual(["    ", "    "]);
    expect(chartRows(chart([], { scale }), 8, 2, gutterFor(scale))[0]).toBe("1000|   ");
  });
});

const looks = fc.constantFrom<Look>("braille", "ascii");
const space = fc.record({ width: fc.integer({ min: 0, max: 90 }), height: fc.integer({ min: 1, max: 20 }) });
const anyPoints = fc
  .array(
    fc.record({
      minutes: fc.integer({ min: -100, max: 200 }),
      value: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      hold: fc.integer({ min: 0, max: 60 }),
    }),
    { maxLength: 30 },
  )
  .map((all) =>
    all.sort((a, b) => a.minutes - b.minutes).map((one) => point(one.minutes, one.value, one.hold)),
  );

describe("whatever is charted", () => {
  test("a chart is never wider or higher than asked", () => {
    fc.assert(
      fc.property(
        anyPoints,
        space,
        looks,
        fc.boolean(),
        fc.integer({ min: 0, max: 12 }),
        (points, { width, height }, look, stepped, gutter) => {
          const scale = scaleFor(
            points.map(({ value }) => value),
            1,
          );
          const lines = [
            { sign: "", points },
            { sign: "a", points },
          ];
          const one = chart([], { lines, look, stepped, scale, limits: [0, 5], cursor: TEN });
          const rows = chartRows(one, width, height, gutter);
          expect(rows).toHaveLength(height);
          for (const row of rows) expect(stringWidth(row)).toBe(width);
        },
      ),
    );
  });

  test("the first and the last moment, the lowest and the highest value land in the outermost cells", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 80 }),
        fc.integer({ min: 2, max: 20 }),
        looks,
        (width, height, look) => {
          const rows = plot(chart([point(0, 0, 1), point(60, 10, 1)], { look }), width, height);
          expect(rows.at(-1)?.[0]).not.toBe(" ");
          expect(rows[0]?.[width - 1]).not.toBe(" ");
          const inked = rows.flatMap((row) => [...row].filter((cell) => cell !== " "));
          expect(inked).toHaveLength(2);
        },
      ),
    );
  });

  test("in ASCII it uses nothing else", () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const rows = chartRows(chart(points, { limits: [5], cursor: TEN }), 60, 6, 3);
        expect(rows.join("")).toMatch(/^[ -~]*$/);
      }),
    );
    expect(signsText("ascii")).toMatch(/^[ -~]*$/);
  });
});

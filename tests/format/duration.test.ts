/** Lengths of time as text, held against a general-purpose date library. */
import fc from "fast-check";
import { Duration } from "luxon";
import { describe, expect, test } from "vitest";
import { dueText, minutesText, stopwatch } from "../../src/format/duration.ts";

const second = 1000;
const hour = 3600 * second;

describe("a stopwatch", () => {
  test.each([
    [0, "0:00"],
    [999, "0:00"],
    [59 * second, "0:59"],
    [60 * second, "1:00"],
    [249 * second, "4:09"],
    [hour - 1, "59:59"],
    [hour, "1:00:00"],
    [3734 * second, "1:02:14"],
    [25 * hour, "25:00:00"],
    [-5 * second, "0:00"],
  ])("after %d ms it reads %s", (ms, text) => {
    expect(stopwatch(ms)).toBe(text);
  });

  test("it reads as the date library's does, for any length of time", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100 * hour }), (ms) => {
        expect(stopwatch(ms)).toBe(Duration.fromMillis(ms).toFormat(ms < hour ? "m:ss" : "h:mm:ss"));
      }),
    );
  });
});

test("minutes are whole minutes that have passed", () => {
  expect([0, 59_999, 60_000, 64 * 60_000 + 59_000, -1].map(minutesText)).toEqual([
    "0 min",
    "0 min",
    "1 min",
    "64 min",
    "0 min",
  ]);
});

describe("a due time", () => {
  test.each([
    [98 * second, "due in 1:38"],
    [second, "due in 0:01"],
    [999, "due now"],
    [0, "due now"],
    [-999, "due now"],
    [-second, "overdue 0:01"],
    [-125 * second, "overdue 2:05"],
  ])("with %d ms left it reads %s", (ms, text) => {
    expect(dueText(ms)).toBe(text);
  });
});

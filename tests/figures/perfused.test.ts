/** When the pump perfuses the whole body. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { liesIn, perfused } from "../../src/figures/perfused.ts";
import { isOn, readRun } from "../../src/figures/run.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { at, runAt, typed } from "../helpers/typed-case.ts";

const stretches = (...lines: string[]) =>
  perfused(runAt(typed(lines), "12:00").course.spans).map(({ from, to }) =>
    [from, to].map((ms) => (ms === null ? null : (ms - at("09:00").ms) / 60_000)),
  );

test("it is the time on bypass", () => {
  expect(stretches("09:00 b", "09:30 b", "09:40 b")).toEqual([
    [0, 30],
    [40, null],
  ]);
});

test("circulatory arrest and cerebral perfusion are cut out, wherever they lie", () => {
  expect(stretches("09:00 b", "09:10 m a", "09:20 m a", "09:30 b")).toEqual([
    [0, 10],
    [20, 30],
  ]);
  expect(stretches("09:00 b", "09:10 m a", "09:15 m ca", "09:20 m a", "09:25 m c")).toEqual([
    [0, 10],
    [25, null],
  ]);
  expect(stretches("09:00 b", "09:10 m a", "09:15 b", "09:20 b", "09:25 m a")).toEqual([
    [0, 10],
    [25, null],
  ]);
  expect(stretches("09:00 b", "09:10 m a")).toEqual([[0, 10]]);
});

test("at any moment of any run it is bypass without the two", () => {
  fc.assert(
    fc.property(anyRun(30), (typing) => {
      play(typing, (file, now) => {
        const { course } = readRun(file, now.ms + 1);
        const expected =
          isOn(course, "bypass") &&
          !isOn(course, "circulatory-arrest") &&
          !isOn(course, "cerebral-perfusion");
        expect(liesIn(perfused(course.spans), now.ms + 1)).toBe(expected);
      });
    }),
    { numRuns: 30 },
  );
});

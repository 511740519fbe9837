/** The clocks of the run. */
import fc from "fast-check";
import { DateTime, Interval } from "luxon";
import { describe, expect, test } from "vitest";
import { readRun } from "../../src/figures/run.ts";
import type { Timers } from "../../src/figures/timers.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { at, minutes, runAt, typed } from "../helpers/typed-case.ts";

const oneRun = ["09:00 b", "09:10 x", "10:00 x", "10:20 b"];

/** A clock's total and current time in minutes. */
const reads = (lines: readonly string[], clock: string, name: keyof Timers) => {
  const { total, current } = runAt(typed(lines), clock).timers[name];
  return [total, current].map((ms) => (ms === null ? null : ms / minutes(1)));
};

describe("bypass time", () => {
  test("is not known before bypass", () => {
    expect(reads(["08:30 a 480"], "09:00", "bypass")).toEqual([null, null]);
  });

  test("runs while bypass is on, and stands still afterwards", () => {
    expect(reads(oneRun.slice(0, 1), "09:05", "bypass")).toEqual([5, 5]);
    expect(reads(oneRun, "10:20", "bypass")).toEqual([80, null]);
    expect(reads(oneRun, "11:00", "bypass")).toEqual([80, null]);
  });

  test("of a second run adds to the first, and shows its own", () => {
    expect(reads([...oneRun, "10:30 b"], "10:35", "bypass")).toEqual([85, 5]);
  });

  test("follows when the start is put right", () => {
    expect(reads([...oneRun, "10:21 z #2 @8:58"], "11:00", "bypass")).toEqual([82, null]);
  });
});

describe("arrest time", () => {
  test("is from clamp on to clamp off, whatever bypass does", () => {
    expect(reads(oneRun, "10:10", "arrest")).toEqual([50, null]);
    expect(reads(["09:10 x", "09:20 b", "10:00 x"], "10:10", "arrest")).toEqual([50, null]);
  });

  test("of a second clamp adds to the first", () => {
    expect(reads([...oneRun.slice(0, 3), "10:05 x"], "10:08", "arrest")).toEqual([53, 3]);
  });
});

describe("reperfusion", () => {
  test("runs from the last clamp off while on bypass", () => {
    expect(reads(oneRun.slice(0, 3), "10:05", "reperfusion")).toEqual([5, 5]);
    expect(reads(oneRun, "10:40", "reperfusion")).toEqual([20, null]);
  });

  test("is nothing while a clamp is on, and begins again when that comes off", () => {
    const twoClamps = [...oneRun.slice(0, 3), "10:05 x"];
    expect(reads(twoClamps, "10:08", "reperfusion")).toEqual([null, null]);
    expect(reads([...twoClamps, "10:10 x"], "10:12", "reperfusion")).toEqual([2, 2]);
  });

  test("is nothing when bypass ends in the moment the clamp comes off", () => {
    expect(reads([...oneRun.slice(0, 3), "10:00 b"], "10:10", "reperfusion")).toEqual([null, null]);
  });

  test("leaves out the time between two runs", () => {
    expect(reads([...oneRun, "10:30 b"], "10:35", "reperfusion")).toEqual([25, 5]);
  });
});

test("circulatory arrest has a clock of its own", () => {
  const lines = ["09:00 b", "09:30 m a", "09:52 m a"];
  expect(reads(lines, "10:00", "circulatoryArrest")).toEqual([22, null]);
});

test("a moment before an entry does not count below nought", () => {
  expect(reads(oneRun, "08:00", "bypass")).toEqual([0, null]);
});

test("bypass time is what a date library makes of the same intervals", () => {
  const day = DateTime.fromISO("2026-03-04T08:00+01:00", { setZone: true });
  const second = fc.integer({ min: 0, max: 6 * 3600 });
  fc.assert(
    fc.property(fc.uniqueArray(second, { minLength: 1, maxLength: 9 }), second, (seconds, more) => {
      const moments = seconds.toSorted((a, b) => a - b).map((s) => day.plus({ seconds: s }));
      const now = (moments.at(-1) as DateTime).plus({ seconds: more });
      const file = typed(moments.map((moment) => `${moment.toFormat("HH:mm:ss")} b`));
      const runs = moments
        .map((from, i) => Interval.fromDateTimes(from, moments[i + 1] ?? now))
        .filter((_, i) => i % 2 === 0);
      expect(readRun(file, now.toMillis()).timers.bypass.total).toBe(
        runs.reduce((sum, run) => sum + run.length("milliseconds"), 0),
      );
    }),
  );
});

test("no clock runs backwards, and none runs faster than time", () => {
  fc.assert(
    fc.property(
      anyRun(25),
      fc.array(fc.integer({ min: 0, max: 7200_000 }), { maxLength: 12, size: "max" }),
      (run, steps) => {
        const file = play(run);
        let now = at("08:00").ms;
        let before = readRun(file, now);
        for (const step of steps) {
          now += step;
          const after = readRun(file, now);
          for (const name of ["bypass", "arrest", "reperfusion", "circulatoryArrest"] as const) {
            const gained = (after.timers[name].total ?? 0) - (before.timers[name].total ?? 0);
            expect(gained).toBeGreaterThanOrEqual(0);
            expect(gained).toBeLessThanOrEqual(step);
          }
          expect((after.nextDose.since ?? 0) - (before.nextDose.since ?? 0)).toBeGreaterThanOrEqual(0);
          expect((after.act?.age ?? 0) - (before.act?.age ?? 0)).toBeGreaterThanOrEqual(0);
          before = after;
        }
      },
    ),
  );
});

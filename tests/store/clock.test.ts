// The session's clock against steps of the system clock, sleep, daylight saving and restarts.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toIso } from "../../src/format/instant.ts";
import { openClock, realSources, recordedSteps, type Sources, startsBefore } from "../../src/store/clock.ts";
import { aCase, withEntry } from "./cases.ts";
import { START, withNotes } from "./notes.ts";

const SECOND = 1000;
const HOUR = 3600 * SECOND;

/** A computer whose clocks a test can move. */
function computer(wall = START) {
  let monotonic = 5_000_000;
  let uptime = 9_000_000;
  let offset = 60;
  const sources: Sources = {
    wall: () => wall,
    monotonic: () => monotonic,
    // As on systems that count whole seconds only.
    uptime: () => Math.floor(uptime / SECOND),
    offset: () => offset,
  };
  return {
    sources,
    pass(ms: number) {
      wall += ms;
      monotonic += ms;
      uptime += ms;
    },
    step(ms: number) {
      wall += ms;
    },
    sleep(ms: number) {
      wall += ms;
      uptime += ms;
    },
    offset(minutes: number) {
      offset = minutes;
    },
    wall: () => wall,
  };
}

test("the clock starts at the wall's time with the wall's offset, and goes on with it", () => {
  const { sources, pass } = computer();
  const clock = openClock(sources);
  expect(clock.now()).toEqual({ ms: START, offset: 60 });
  pass(61_500);
  expect(clock.now()).toEqual({ ms: START + 61_500, offset: 60 });
  expect(clock.check()).toBeNull();
});

describe.each([
  ["forward", HOUR],
  ["back", -HOUR],
  ["forward by years", 20 * 365 * 24 * HOUR],
  ["back by three seconds", -3 * SECOND],
])("a system clock that is moved %s", (_, stepMs) => {
  test("is told once, and the session's time does not jump", () => {
    const { sources, pass, step } = computer();
    const clock = openClock(sources);
    pass(10_000);
    step(stepMs);
    expect(clock.now().ms).toBe(START + 10_000);
    expect(clock.check()).toEqual({ stepMs });
    expect(clock.check()).toBeNull();
    pass(10_000);
    expect(clock.now().ms).toBe(START + 20_000);
    expect(clock.check()).toBeNull();
  });

  test("moves no timer after a restart either", () => {
    const { sources, pass, step } = computer();
    const first = openClock(sources);
    pass(10_000);
    step(stepMs);
    const file = withEntry(aCase(), { kind: "clock", ...first.check() });
    const second = openClock(sources, recordedSteps(file.entries));
    expect(second.now().ms).toBe(START + 10_000);
    expect(second.check()).toBeNull();
    pass(5000);
    expect(second.now().ms).toBe(START + 15_000);
  });
});

describe("small differences between the clocks", () => {
  test("are no step", () => {
    const { sources, pass, step } = computer();
    const clock = openClock(sources);
    pass(60_000);
    step(1900);
    expect(clock.check()).toBeNull();
  });

  test("are one when they add up", () => {
    const { sources, pass, step } = computer();
    const clock = openClock(sources);
    const steps = [1, 2, 3].map(() => {
      pass(60_000);
      step(900);
      return clock.check();
    });
    expect(steps).toEqual([null, null, { stepMs: 2700 }]);
  });
});

describe("a computer that sleeps", () => {
  test("has its sleep counted as time that passed, and not as a step", () => {
    const { sources, pass, sleep } = computer();
    const clock = openClock(sources);
    pass(10_000);
    sleep(HOUR);
    expect(clock.check()).toBeNull();
    expect(clock.now().ms).toBe(START + 10_000 + HOUR);
    pass(10_000);
    expect(clock.now().ms).toBe(START + 20_000 + HOUR);
  });

  test("and wakes with its clock moved has both told apart", () => {
    const { sources, sleep, step } = computer();
    const clock = openClock(sources);
    sleep(2 * HOUR);
    step(-HOUR);
    expect(clock.check()).toEqual({ stepMs: -HOUR });
    expect(clock.now().ms).toBe(START + 2 * HOUR);
  });

  test("whose monotonic clock goes on meanwhile does not have it counted twice", () => {
    const { sources, pass } = computer();
    const clock = openClock(sources);
    pass(HOUR);
    expect(clock.now().ms).toBe(START + HOUR);
    expect(clock.check()).toBeNull();
  });

  test("many times and briefly stays within two seconds", () => {
    const { sources, pass, sleep, wall } = computer();
    const clock = openClock(sources);
    for (let i = 0; i < 100; i++) {
      pass(7000);
      sleep(700);
      expect(clock.check()).toBeNull();
      expect(Math.abs(clock.now().ms - wall())).toBeLessThan(2000);
    }
  });
});

test("a program that is held up between two looks takes it for neither sleep nor a step", () => {
  const { sources, pass } = computer();
  let heldUp = 0;
  const slow: Sources = {
    ...sources,
    uptime() {
      if (heldUp-- > 0) pass(30_000);
      return sources.uptime();
    },
  };
  const clock = openClock(slow);
  for (const times of [1, 3, 100]) {
    heldUp = times;
    const before = sources.wall();
    const { ms } = clock.now();
    expect(ms).toBeGreaterThanOrEqual(before);
    expect(ms).toBeLessThanOrEqual(sources.wall());
    heldUp = times;
    expect(clock.check()).toBeNull();
  }
  heldUp = 0;
  expect(clock.now().ms).toBe(sources.wall());
});

test("daylight saving shows in the offset only", () => {
  const { sources, pass, offset } = computer();
  const clock = openClock(sources);
  const before = clock.now();
  pass(SECOND);
  offset(120);
  const after = clock.now();
  expect(clock.check()).toBeNull();
  expect(after.ms - before.ms).toBe(SECOND);
  expect([toIso(before), toIso(after)]).toEqual([
    "2026-03-04T09:00:00.000+01:00",
    "2026-03-04T10:00:01.000+02:00",
  ]);
});

test("the offset of a place with daylight saving is that of the day", () => {
  const zone = process.env.TZ;
  process.env.TZ = "Europe/Vienna";
  try {
    expect(realSources.offset(Date.UTC(2026, 0, 1))).toBe(60);
    expect(realSources.offset(Date.UTC(2026, 2, 29, 0, 59, 59))).toBe(60);
    expect(realSources.offset(Date.UTC(2026, 2, 29, 1, 0, 0))).toBe(120);
  } finally {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  }
});

test("the real clock reads the time and sees no step in a moment", async () => {
  const clock = openClock();
  const before = Date.now();
  await new Promise((resolve) => setTimeout(resolve, 30));
  const { ms } = clock.now();
  expect(ms).toBeGreaterThan(before);
  // Whole milliseconds of two clocks.
  expect(ms).toBeLessThanOrEqual(Date.now() + 2);
  expect(clock.check()).toBeNull();
});

test("whatever is done to the clocks, the session's time goes on with what passes and never back", () => {
  const event = fc.oneof(
    fc.record({ do: fc.constant("pass" as const), ms: fc.integer({ min: 0, max: 4 * HOUR }) }),
    fc.record({ do: fc.constant("step" as const), ms: fc.integer({ min: -30 * HOUR, max: 30 * HOUR }) }),
    fc.record({ do: fc.constant("sleep" as const), ms: fc.integer({ min: 0, max: 9 * HOUR }) }),
    fc.record({ do: fc.constant("offset" as const), ms: fc.constantFrom(-720, 0, 60, 120, 345, 840) }),
  );
  fc.assert(
    fc.property(fc.array(event, { maxLength: 60 }), (events) => {
      const machine = computer();
      const clock = openClock(machine.sources);
      let passed = 0;
      let stepped = 0;
      let told = 0;
      let last = clock.now().ms;
      for (const { do: what, ms } of events) {
        machine[what](ms);
        if (what === "pass" || what === "sleep") passed += ms;
        if (what === "step") stepped += ms;
        const { ms: now } = clock.now();
        told += clock.check()?.stepMs ?? 0;
        expect(now).toBeGreaterThanOrEqual(last);
        // Brief sleeps under the coarse uptime are the only thing that can be missed, for a while.
        expect(Math.abs(now - START - passed)).toBeLessThan(2600);
        expect(Math.abs(told - stepped)).toBeLessThan(4600);
        last = now;
      }
    }),
    { numRuns: 2000 },
  );
});

describe("a session that starts", () => {
  const file = withNotes(aCase(), 9);
  const last = START + 10 * 60_000;

  test("after the last entry is in order", () => {
    expect(startsBefore(file, { ms: last, offset: 0 })).toBeNull();
  });

  test("before the last entry says by how much", () => {
    expect(startsBefore(file, { ms: last - HOUR, offset: 0 })).toBe(HOUR);
  });
});

/** The figures follow from the list of entries alone: read back from the file they are what they were. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Run, readRun } from "../../src/figures/run.ts";
import { readCase } from "../../src/record/reading-a-file.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { given, minutes, runAt, typed } from "../helpers/typed-case.ts";

/** A run without the protocol it rests on, which is the same throughout. */
const said = ({ course: { protocol, ...course }, ...run }: Run) => ({ ...run, course });

test("replaying a run from its file gives at every step what was shown when it was typed", () => {
  fc.assert(
    fc.property(anyRun(30), (run) => {
      const shown: { count: number; now: number; run: Run }[] = [];
      const file = play(run, (so, now) =>
        shown.push({ count: so.entries.length, now: now.ms, run: readRun(so, now.ms) }),
      );
      const reloaded = readCase(JSON.stringify(file));
      if (!reloaded.ok) throw new Error(reloaded.fault);
      for (const { count, now, run: live } of shown) {
        const replayed = { ...reloaded.value, entries: reloaded.value.entries.slice(0, count) };
        expect(said(readRun(replayed, now))).toEqual(said(live));
      }
    }),
    { numRuns: 60 },
  );
});

test("the same entries under another protocol are read anew", () => {
  const file = typed(["09:10 d 1000"]);
  const discarding = { ...file, protocol: { ...file.protocol, solutionCountsAsFluid: false } };
  expect([file, discarding, file].map((one) => runAt(one, "10:00").course.balances.fluidIn.value)).toEqual([
    200,
    null,
    200,
  ]);
});

test("a closed case stands still until it is reopened", () => {
  const closed = given(typed(["09:00 b", "09:30 a 480"]), { kind: "closed", operator: "AB" }, "10:00");
  const read = (file: typeof closed, clock: string) => {
    const { timers, act, now } = runAt(file, clock);
    return [timers.bypass.total, act?.age, now - runAt(closed, "10:00").now].map(
      (ms) => (ms ?? 0) / minutes(1),
    );
  };
  expect([read(closed, "09:45"), read(closed, "10:00"), read(closed, "18:00")]).toEqual([
    [45, 15, -15],
    [60, 30, 0],
    [60, 30, 0],
  ]);
  const reopened = given(closed, { kind: "reopened", operator: "EF", reason: "more" }, "11:00");
  expect(read(reopened, "12:00")).toEqual([180, 150, 120]);
  expect(runAt(reopened, "12:00").course.operator).toBe("EF");
});

test("a handover struck out leaves the pump with the one before, also for the entries that follow", () => {
  const handed = given(typed([]), { kind: "operator", operator: "EF" }, "09:00");
  expect(runAt(handed, "10:00").course.operator).toBe("EF");
  const struck = given(handed, { kind: "void", target: "e2", reason: "not yet" }, "09:01");
  expect(runAt(struck, "10:00").course.operator).toBe("AB");
  expect(given(struck, { kind: "note", text: "on" }, "09:02").entries.at(-1)?.by).toBe("AB");
});

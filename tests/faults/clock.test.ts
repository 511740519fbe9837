// Clocks that are set, and computers that sleep, while a case is on the desk: the record's time goes on.

import { beforeEach, describe, expect, onTestFinished, test, vi } from "vitest";
import { openDesk } from "../../src/commands/case-desk.ts";
import { openSession } from "../../src/commands/session.ts";
import { runApp } from "../../src/console/app.ts";
import { readRun } from "../../src/figures/run.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { caseFaults } from "../../src/store/case-faults.ts";
import type { Sources } from "../../src/store/clock.ts";
import { createCase, openCase } from "../../src/store/open-case.ts";
import { START } from "../store/notes.ts";
import { testFolder } from "../store/test-folder.ts";

const HOUR = 3_600_000;

let folder: string;
beforeEach(async () => {
  ({ folder } = await testFolder());
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  onTestFinished(() => void vi.useRealTimers());
});

/** A computer whose clocks the test moves. */
function computer() {
  let [wall, monotonic, offset] = [START, 0, 60];
  const sources: Sources = {
    wall: () => wall,
    monotonic: () => monotonic,
    uptime: () => monotonic / 1000,
    offset: () => offset,
  };
  return {
    sources,
    /** Time goes by, and the session ticks. */
    pass(ms: number) {
      wall += ms;
      monotonic += ms;
      vi.advanceTimersByTime(2000);
    },
    set(by: number) {
      wall += by;
    },
    zone(minutes: number) {
      offset = minutes;
    },
  };
}

/** A case on the desk of that computer, bypass on. */
async function onBypass(clocks: ReturnType<typeof computer>) {
  const now = { ms: START, offset: 60 };
  const made = await createCase({ folder, label: "clock", protocol: adultProtocol, operator: "KM", now });
  if (!made.ok) throw new Error(made.fault);
  const desk = openDesk(folder, { copyTo: null, sources: clocks.sources });
  const opened = await desk.hold(made.value.path);
  if (opened.name !== "opened") throw new Error(opened.name);
  const session = openSession(desk, { app: runApp(opened, null), effects: [] });
  onTestFinished(() => session.end());
  session.received("b\r");
  const model = () => {
    const { app } = session.view();
    return app.screen === "run" ? app.model : expect.unreachable("the run was left");
  };
  const bypass = () => readRun(model().file, session.view().now.ms).timers.bypass.total;
  return { session, path: made.value.path, model, bypass };
}

async function faultsOnDisk(path: string, end: () => Promise<void>): Promise<string[]> {
  vi.useRealTimers();
  await end();
  const opened = await openCase(path);
  return opened.ok ? caseFaults(opened.value.file) : [opened.fault];
}

describe.each([
  ["ahead", 5 * HOUR],
  ["back", -5 * HOUR],
])("a clock that is set %s by five hours", (_, by) => {
  test("becomes an entry that says so; no timer jumps, and the record checks whole", async () => {
    const clocks = computer();
    const { session, path, model, bypass } = await onBypass(clocks);
    clocks.pass(60_000);
    clocks.set(by);
    clocks.pass(60_000);
    session.received("a480\r");
    expect(model().file.entries.map(({ kind }) => kind)).toEqual(["opened", "span", "clock", "act"]);
    expect(model().file.entries[2]).toMatchObject({ kind: "clock", stepMs: by });
    expect(bypass()).toBe(120_000);
    expect(await faultsOnDisk(path, session.end)).toEqual([]);
  });
});

test("an end of daylight saving changes what the clock shows, not what has passed, and writes no entry", async () => {
  const clocks = computer();
  const { session, path, model, bypass } = await onBypass(clocks);
  clocks.pass(60_000);
  clocks.zone(0);
  clocks.pass(60_000);
  session.received("a480\r");
  expect(model().file.entries.map(({ kind }) => kind)).toEqual(["opened", "span", "act"]);
  expect(model().file.entries.at(-1)?.at).toBe("2026-03-04T08:02:00.000+00:00");
  expect(bypass()).toBe(120_000);
  expect(await faultsOnDisk(path, session.end)).toEqual([]);
});

test("a computer that sleeps for an hour wakes to timers that went on, and to no step of the clock", async () => {
  let [asleep, awake] = [0, 0];
  const sources: Sources = {
    wall: () => START + awake + asleep,
    // The monotonic clock of many systems stands still in sleep; the uptime goes on.
    monotonic: () => awake,
    uptime: () => (awake + asleep) / 1000,
    offset: () => 60,
  };
  const { session, path, model, bypass } = await onBypass({ ...computer(), sources });
  awake += 60_000;
  vi.advanceTimersByTime(2000);
  asleep += HOUR;
  vi.advanceTimersByTime(2000);
  session.received("a480\r");
  expect(model().file.entries.map(({ kind }) => kind)).toEqual(["opened", "span", "act"]);
  expect(bypass()).toBe(HOUR + 60_000);
  expect(await faultsOnDisk(path, session.end)).toEqual([]);
});

// A day and a night of one run, on a clock that the test moves: memory stays bounded, and no timer drifts.

import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { render } from "ink-testing-library";
import { createElement } from "react";
import { expect, onTestFinished, test } from "vitest";
import { type App, runApp, updateApp } from "../../src/console/app.ts";
import { keysOf } from "../../src/console/key.ts";
import { courseOf } from "../../src/figures/run.ts";
import { readTimers } from "../../src/figures/timers.ts";
import { Root, type View } from "../../src/screens/Root.tsx";
import { openClock } from "../../src/store/clock.ts";
import { keepCase } from "../../src/store/keeper.ts";
import { aCase } from "../store/cases.ts";
import { recordingDisk } from "../store/disks.ts";
import { START } from "../store/notes.ts";

const HOURS = 24;
const SECONDS = HOURS * 3600;
const ENTRIES = 10_000;
const HOUR = 3600;

/** A collection of garbage, so that what is measured is what is kept. */
setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

/** Bytes that V8 and what it holds outside its heap keep; the system's own view also tells how hard the day was pressed. */
function memory(): number {
  collect();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** What is typed in turn: every eighth or ninth second one of them. */
const STROKES = ["f4.5", "a480", "d300r", "v200c", "n all quiet", "t32", "u=", "l800", "h5000"];

test(`${HOURS} hours with ${ENTRIES} entries and a tick a second keep memory bounded and every timer true`, async () => {
  let second = 0;
  // The clock of the computer runs a little slow and is put right now and then, as time servers do.
  const clock = openClock({
    wall: () => START + second * 1000 - (second % 600),
    monotonic: () => second * 1000,
    uptime: () => second,
    offset: () => 0,
  });
  const file = aCase();
  let app: App = runApp({ file, clockEarlyBy: null, halfTyped: [] }, null);
  const { disk, calls } = recordingDisk();
  const faults: string[] = [];
  const keeper = keepCase({
    path: "/cases/case-20260304-abcdef.json",
    file,
    disk,
    onSaved: (seq) => {
      app = updateApp(app, { name: "saved", seq }, clock.now()).app;
      calls.length = 0;
    },
    onFault: (words) => faults.push(words),
  });
  const type = (text: string): void => {
    for (const key of keysOf(`${text}\n`)) {
      const step = updateApp(app, key, clock.now());
      app = step.app;
      for (const effect of step.effects) if (effect.do === "save") keeper.keep(effect.file);
    }
  };
  const model = () => (app.screen === "run" ? app.model : expect.unreachable("the run was left"));

  // A screen that is drawn now and then, as the program's own: what it holds on to counts too.
  let view: View = { app, now: clock.now(), folder: "" };
  const watching = new Set<() => void>();
  const shown = render(
    createElement(Root, {
      session: {
        received: () => {},
        view: () => view,
        subscribe: (changed: () => void) => {
          watching.add(changed);
          return () => watching.delete(changed);
        },
      },
    }),
  );
  onTestFinished(() => shown.unmount());

  type("b");
  type("x");
  const clampedAt = second;
  let afterFirstHour = 0;
  let worst = 0;
  for (second = 1; second <= SECONDS; second++) {
    const due = Math.floor((second * (ENTRIES - 3)) / SECONDS);
    const entries = model().file.entries.length - 3;
    if (entries < due) {
      const stroke = STROKES[entries % STROKES.length] as string;
      type(stroke === "u=" ? `u=${entries}` : stroke);
    }
    expect(clock.check()).toBeNull();
    const now = clock.now();
    const timers = readTimers(courseOf(model().file).spans, now.ms);
    for (const { total } of [timers.bypass, timers.arrest])
      worst = Math.max(worst, Math.abs((total ?? 0) - (second - clampedAt) * 1000));
    if (second % 60 === 0) await keeper.settle();
    if (second % 600 === 0) {
      view = { app, now, folder: "" };
      for (const changed of watching) changed();
    }
    if (second === HOUR) afterFirstHour = memory();
  }
  await keeper.settle();
  expect(faults).toEqual([]);
  expect(model().file.entries).toHaveLength(ENTRIES);
  expect(model().saved).toBe(ENTRIES);
  expect(worst).toBeLessThanOrEqual(1000);
  const atTheEnd = memory();
  expect(atTheEnd / afterFirstHour).toBeLessThanOrEqual(1.2);
}, 600_000);

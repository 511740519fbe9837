// A form half filled in a real terminal: still there after a look at another panel, a resize, a kill and a leave.

import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { caseAt, caseFolder, enter, lineOpen, newCase, PATIENCE, saved } from "./driving.ts";
import { keys, type RunningConsole, startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  folder = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

/** Readings with flow and pressure typed, on the third field. */
async function halfFilled(label: string): Promise<{ console: RunningConsole; path: string }> {
  const path = await newCase(folder.dir, label);
  const console = startConsole({ dir: folder.dir, args: ["run", path] });
  await console.waitFor(saved(1), PATIENCE);
  await console.type(`s4.75${enter}62${enter}`);
  await console.waitFor(lineOpen("s readings · CVP"), PATIENCE);
  return { console, path };
}

const FILLED = (screen: string[]): boolean => {
  const text = screen.join("\n");
  return lineOpen("s readings")(screen) && text.includes("4.75") && text.includes("62");
};

/** Goes on with the form and writes it. */
async function finished(console: RunningConsole, path: string): Promise<void> {
  await console.waitFor(FILLED, PATIENCE);
  await console.type(`5;${enter}`);
  await console.waitFor(saved(2), PATIENCE);
  expect((await caseAt(path)).entries.at(-1)).toMatchObject({
    kind: "readings",
    values: { flow: 4.75, meanPressure: 62, centralVenousPressure: 5 },
  });
}

/** The case opened again, with the form brought back. */
async function resumed(path: string, asksAboutLock: boolean): Promise<RunningConsole> {
  const console = startConsole({ dir: folder.dir, args: ["run", path] });
  if (asksAboutLock) {
    await console.waitFor("Take it over? [y/N]", PATIENCE);
    console.raw(`y${enter}`);
  }
  await console.waitFor("Esc brings back: s ", PATIENCE);
  console.raw(keys.escape);
  return console;
}

test("a look at another panel: Esc, Tab, Esc", async () => {
  const { console, path } = await halfFilled("another panel");
  console.raw(keys.escape);
  await console.waitFor("Esc brings back: s ", PATIENCE);
  console.raw(keys.tab);
  await console.waitFor("── live", PATIENCE);
  console.raw(keys.escape);
  await finished(console, path);
});

test("a resize to more room, to too little, and back", async () => {
  const { console, path } = await halfFilled("resized");
  for (const [cols, rows] of [
    [140, 45],
    [60, 18],
    [80, 24],
  ] as const) {
    console.resize(cols, rows);
    await console.waitFor("s readings · CVP", PATIENCE);
  }
  await finished(console, path);
});

test("a kill: all but the last half second of typing is there", async () => {
  const { console, path } = await halfFilled("killed");
  await sleep(500);
  await console.type("99");
  console.kill("SIGKILL");
  await console.exited;
  const again = await resumed(path, true);
  await again.waitFor(lineOpen("s readings · CVP"), PATIENCE);
  await again.type(keys.backspace.repeat(2));
  await finished(again, path);
});

test("a leave by q and Enter, and a resume", async () => {
  const { console, path } = await halfFilled("left");
  console.raw(keys.escape);
  await console.waitFor("Esc brings back: s ", PATIENCE);
  await console.type("q");
  await console.waitFor("Enter leaves", PATIENCE);
  console.raw(enter);
  await console.exited;
  const again = await resumed(path, false);
  await again.waitFor(lineOpen("s readings · CVP"), PATIENCE);
  await finished(again, path);
});

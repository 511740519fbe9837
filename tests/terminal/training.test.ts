// Typing along in a terminal: the order stands in its row, the stroke answers it, and the result comes behind the screen.

import { mkdir, readdir } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { trainingRun } from "../../src/commands/invented/training-run.ts";
import { caseFolder, PATIENCE } from "./driving.ts";
import { startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  folder = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

test("the orders are said, answered by their strokes, and scored when the person leaves", async () => {
  const temporary = join(folder.dir, "temporary");
  await mkdir(temporary);
  const console = startConsole({
    dir: folder.dir,
    args: ["demo", "--typed", "--speed", "30"],
    env: { TMPDIR: temporary },
  });
  for (const { says, type } of trainingRun.steps.slice(0, 3)) {
    await console.waitFor(says, PATIENCE);
    console.raw(`${type}\r`);
  }
  await console.waitFor(trainingRun.steps[3]?.says ?? "", PATIENCE);
  expect(await readdir(temporary)).toHaveLength(1);
  console.raw("q");
  await console.waitFor("Enter leaves", PATIENCE);
  console.raw("\r");
  expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
  await console.waitFor("4 of 24 orders were said: 3 right, 0 put right, 0 wrong, 1 missed.", PATIENCE);
  expect(await readdir(temporary)).toEqual([]);
});

// The demo in a terminal: it types the invented case to its last entry, and leaves nothing behind.

import { mkdir, readdir } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { played } from "../../src/commands/invented/play.ts";
import type { Script } from "../../src/commands/invented/script.ts";
import { caseFolder, PATIENCE, readOff, saved } from "./driving.ts";
import { keys, startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  folder = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

const script = INVENTED[0] as Script;

async function demo(speed: string) {
  const temporary = join(folder.dir, `temporary-${speed}`);
  await mkdir(temporary);
  const console = startConsole({
    dir: folder.dir,
    args: ["demo", "--speed", speed],
    env: { TMPDIR: temporary },
  });
  return { console, temporary };
}

test("types the whole case in a hurry, says when all of it is saved, and leaves with q", async () => {
  const whole = played(script);
  if (!whole.ok) throw new Error(whole.fault);
  const { console, temporary } = await demo("10000");
  await console.waitFor(saved(whole.value.entries.length), PATIENCE);
  expect(readOff(await console.settled()).phase).toBe("AFTER");
  expect(await readdir(temporary)).toHaveLength(1);
  console.raw("q");
  expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
  expect(await readdir(temporary)).toEqual([]);
  expect(console.terminal.buffer.active.type).toBe("normal");
});

test("writes no entry late, however great the hurry", async () => {
  const { console } = await demo("9000");
  const late = new Set<string>();
  await console.waitFor((screen) => {
    for (const row of screen) if (/ written \d\d:\d\d$/.test(row)) late.add(row);
    return saved(40)(screen);
  }, PATIENCE);
  expect([...late]).toEqual([]);
});

test("can be left before its end, by Ctrl-C too", async () => {
  const { console, temporary } = await demo("1");
  await console.waitFor(saved(1), PATIENCE);
  console.raw(keys.interrupt);
  expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
  expect(await readdir(temporary)).toEqual([]);
});

test("begun from the list of cases leads back to it", async () => {
  const console = startConsole({ dir: folder.dir });
  await console.waitFor("demo", PATIENCE);
  console.raw("d");
  await console.waitFor(script.label, PATIENCE);
  console.raw("q");
  await console.waitFor("n makes a new case", PATIENCE);
  console.raw("q");
  expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
});

// An encrypted folder at a real terminal: the passphrase is asked for and never shown, and nothing of a case can be read
// in the folder at any moment of a session, whatever ends it.

import { readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { filesWith, PASSPHRASE } from "../store/safes.ts";
import { enter, lineOpen, newCase, PATIENCE, saved } from "./driving.ts";
import { keys, type RunningConsole, startConsole, stopConsoles } from "./harness.ts";
import { testDir } from "./test-folder.ts";

let dir: string;
beforeEach(async () => {
  dir = await testDir();
});
afterEach(stopConsoles);

const ASKED = "Passphrase of this folder (it is not shown):";
const SECRETS = ["hush", "28000", "heparin", "v 25", "volume", '"entries"', PASSPHRASE];

const shown = (console: RunningConsole): string => console.screen().join("\n");
const asked = (times: number) => (screen: string[]) =>
  screen.filter((row) => row.startsWith(ASKED)).length === times;

/** Starts the program and gives the passphrase when it is asked for. */
async function unlocked(...args: string[]): Promise<RunningConsole> {
  const console = startConsole({ dir, args });
  await console.waitFor(ASKED, PATIENCE);
  await console.type(`${PASSPHRASE}${enter}`);
  return console;
}

/** Waits for the end of a verb, and gives what it said on the screen, rows that were too long for it in one piece. */
async function said(console: RunningConsole): Promise<string> {
  expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
  return console.screen().join("");
}

async function encrypted(): Promise<void> {
  const console = startConsole({ dir, args: ["encrypt"], rows: 40 });
  await console.waitFor("New passphrase (it is not shown):", PATIENCE);
  await console.type(`${PASSPHRASE}${enter}`);
  await console.waitFor("The same once more:", PATIENCE);
  await console.type(`${PASSPHRASE}${enter}`);
  expect(await said(console)).toMatch(/Every case of this folder is encrypted/);
}

describe("encrypt", () => {
  test("asks twice, until both are the same and long enough, and shows nothing of it", async () => {
    await newCase(dir, "hush valve");
    const console = startConsole({ dir, args: ["encrypt"], rows: 40 });
    await console.waitFor("New passphrase (it is not shown):", PATIENCE);
    await console.type(`too short${enter}`);
    await console.waitFor("too short: take at least 16 characters", PATIENCE);
    await console.type(`${PASSPHRASE}${enter}`);
    await console.waitFor("The same once more:", PATIENCE);
    await console.type(`${PASSPHRASE}!${enter}`);
    await console.waitFor("the two were not the same", PATIENCE);
    // Arrows write nothing, Backspace takes one back, and what is typed ahead belongs to the next question.
    console.raw(`${keys.left}${PASSPHRASE}x${keys.backspace}${enter}${PASSPHRASE}${enter}`);
    const screen = await said(console);
    expect(screen).toMatch(/Every case of this folder is encrypted/);
    expect(screen).not.toMatch(/pigeon|lantern|upstairs|\*/);
    expect(await filesWith(dir, ...SECRETS)).toEqual([]);
  });

  test.each([
    ["Ctrl-C", keys.interrupt],
    ["Ctrl-D", "\x04"],
  ])("%s leaves everything as it was", async (_, key) => {
    await newCase(dir, "hush valve");
    const console = startConsole({ dir, args: ["encrypt"], rows: 40 });
    await console.waitFor("New passphrase", PATIENCE);
    await console.type(`${PASSPHRASE}${enter}`);
    await console.waitFor("The same once more:", PATIENCE);
    await console.type(`pig${key}`);
    expect(await console.exited).toEqual({ exitCode: 2, signal: undefined });
    expect(shown(console)).toMatch(/no passphrase was given, so nothing was done\./);
    expect(await readdir(dir)).toHaveLength(1);
  });
});

describe("the passphrase of a folder", () => {
  test("is asked for three times at the most, before anything is shown", async () => {
    await newCase(dir, "hush valve");
    await encrypted();
    const console = startConsole({ dir });
    for (const times of [1, 2, 3]) {
      await console.waitFor(asked(times), PATIENCE);
      await console.type(`not the right words${enter}`);
    }
    expect(await console.exited).toEqual({ exitCode: 2, signal: undefined });
    const screen = shown(console);
    expect(screen.match(/that is not the passphrase of this folder\./g)).toHaveLength(3);
    expect(screen).toMatch(/that was the last of 3 tries, so nothing was done\./);
    expect(screen).not.toMatch(/hush|words/);
  });

  test("is not asked for where nothing is encrypted", async () => {
    await newCase(dir, "valve");
    const console = startConsole({ dir });
    await console.waitFor("1 entries  valve", PATIENCE);
    expect(shown(console)).not.toContain("assphrase");
  });

  test("of cases that came from elsewhere can be left out, and the console goes on without them", async () => {
    await newCase(dir, "hush valve");
    await encrypted();
    await rm(join(dir, "pumpside.passphrase"));
    const console = startConsole({ dir });
    await console.waitFor("Enter alone goes on without", PATIENCE);
    console.raw(enter);
    await console.waitFor("it is encrypted, and no passphrase", PATIENCE);
    expect(shown(console)).not.toContain("hush");
  });

  test("of a folder that lost its marker is asked for by encrypt, which writes the marker again", async () => {
    await newCase(dir, "hush valve");
    await encrypted();
    await rm(join(dir, "pumpside.passphrase"));
    const again = startConsole({ dir, args: ["encrypt"] });
    await again.waitFor("Enter alone goes on without", PATIENCE);
    await again.type(`${PASSPHRASE}${enter}`);
    expect(await said(again)).toMatch(/Files rewritten: 0\./);
    expect(await readdir(dir)).toContain("pumpside.passphrase");
    expect(await said(await unlocked("list"))).toMatch(/hush valve/);
  });

  test("of cases that came from elsewhere is not that of a folder which is encrypted around them", async () => {
    const path = await newCase(dir, "hush valve");
    await encrypted();
    await rm(join(dir, "pumpside.passphrase"));
    const before = await readFile(path);
    const own = startConsole({ dir, args: ["encrypt"], rows: 40 });
    await own.waitFor("Enter alone goes on without", PATIENCE);
    own.raw(enter);
    await own.waitFor("New passphrase", PATIENCE);
    await own.type(`other words for this${enter}`);
    await own.waitFor("The same once more:", PATIENCE);
    await own.type(`other words for this${enter}`);
    expect(await said(own)).toMatch(/Every case of this folder is encrypted/);
    expect(await readFile(path)).toEqual(before);
    const list = startConsole({ dir, args: ["list"] });
    await list.waitFor(ASKED, PATIENCE);
    await list.type(`other words for this${enter}`);
    expect(await said(list)).toMatch(/it was encrypted with another passphrase than the one given/);
  });
});

/** Looks into every file of the folder without a pause until it is told to stop; what it could read, and where. */
function watchedFor(texts: readonly string[]) {
  const found = new Set<string>();
  let looks = 0;
  let isOver = false;
  const watching = (async () => {
    while (!isOver) {
      for (const name of await readdir(dir).catch(() => [])) {
        const bytes = await readFile(join(dir, name)).catch(() => Buffer.of());
        for (const text of texts) if (bytes.includes(text)) found.add(`${text} in ${name}`);
      }
      looks += 1;
      await pause(1);
    }
  })();
  return async () => {
    isOver = true;
    await watching;
    return { found: [...found], looks };
  };
}

/** A half-typed line is on the disk a moment after it was typed. */
async function untilHalfTyped(): Promise<void> {
  for (const deadline = performance.now() + PATIENCE; performance.now() < deadline; await pause(10))
    if ((await readdir(dir)).some((name) => name.endsWith(".half-typed"))) return;
  throw new Error("what is half typed was never kept");
}

test("a session, killed and resumed, and every verb after it leave nothing that can be read in the folder", async () => {
  await encrypted();
  const stop = watchedFor(SECRETS);
  const first = await unlocked();
  await first.waitFor("n makes a new case", PATIENCE);
  first.raw("n");
  await first.waitFor("your initials", PATIENCE);
  await first.type(`km hush valve${enter}`);
  await first.waitFor(saved(1), PATIENCE);
  await first.type(`h28000${enter}nhush, a note${enter}b${enter}`);
  await first.waitFor(saved(4), PATIENCE);
  await first.type("v25");
  await first.waitFor(lineOpen("v volume in 25"), PATIENCE);
  await untilHalfTyped();
  first.kill("SIGKILL");
  await first.exited;

  const again = await unlocked();
  await again.waitFor("4 entries  hush valve", PATIENCE);
  again.raw(enter);
  await again.waitFor("Enter takes it over", PATIENCE);
  again.raw(enter);
  await again.waitFor("Esc brings back: v 25", PATIENCE);
  await again.type(`a512${enter}`);
  await again.waitFor(saved(5), PATIENCE);
  await again.type("q");
  await again.waitFor("Enter leaves", PATIENCE);
  again.raw(enter);
  await again.waitFor("5 entries  hush valve", PATIENCE);
  again.raw("q");
  await said(again);

  const review = await unlocked("review", "hush valve");
  await review.waitFor("REVIEW", PATIENCE);
  review.raw("q");
  await said(review);
  expect(await said(await unlocked("list"))).toMatch(/hush valve/);
  expect(await said(await unlocked("check", "hush valve"))).toMatch(/valid and whole: 5 entries/);
  const report = await unlocked("report", "hush valve", "--as", "json");
  await said(report);

  const { found, looks } = await stop();
  expect(found).toEqual([]);
  expect(looks).toBeGreaterThan(20);
  expect(await readdir(dir)).toHaveLength(4);
  expect(await said(await unlocked("decrypt"))).toMatch(/No case of this folder is encrypted any more/);
  expect(await filesWith(dir, "hush valve")).toHaveLength(2);
});

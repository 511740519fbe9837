// Killed at any instant: the file is whole, and nothing that was reported saved is missing from it.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync, utimesSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { build } from "rolldown";
import { afterAll, beforeAll, expect, test } from "vitest";
import { chainFault } from "../../src/store/chain-fault.ts";
import { openFolder } from "../../src/store/folder.ts";
import { createCase, openCase } from "../../src/store/open-case.ts";
import { aCase, scratchFolder } from "../store/cases.ts";
import { noteAt, START } from "../store/notes.ts";

const KILLS = 1000;
const LANES = 4;
const KILLS_A_CASE = 20;

const source = fileURLToPath(new URL("log-until-killed.ts", import.meta.url));
let logger: string;

let scratch: Awaited<ReturnType<typeof scratchFolder>>;
beforeAll(async () => {
  scratch = await scratchFolder();
  // One file, which ends by itself for want of a case and leaves its compiled form: those that will be killed start fast.
  logger = join(scratch.folder, "logger.mjs");
  await build({
    input: source,
    platform: "node",
    logLevel: "warn",
    output: { file: logger, format: "esm", codeSplitting: false },
  });
  await once(startLogger(join(scratch.folder, "none.json")), "close");
});
afterAll(() => scratch.remove());

async function newCase(): Promise<string> {
  const now = { ms: START, offset: 0 };
  const { protocol } = aCase();
  const made = await createCase({ folder: scratch.folder, label: "killed", protocol, operator: "AB", now });
  if (!made.ok) throw new Error(made.fault);
  return made.value.path;
}

const startLogger = (path: string) =>
  spawn(process.execPath, [logger, path], {
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, NODE_OPTIONS: "", NODE_COMPILE_CACHE: join(scratch.folder, "compiled") },
  });

type Told = { opened: number | null; saved: number; faults: string[] };

/** Saves that are waited for before a kill, in turn: none is a kill while the case is opened. */
const SAVES_BEFORE = [1, 2, 4, 3, 0];

/** Logs into a case until killed at a random instant after so many saves; what the logger told before. */
async function logAndKill(path: string, saves: number): Promise<Told> {
  const child = startLogger(path);
  let out = "";
  let error = "";
  child.stdout.on("data", (chunk) => {
    out += chunk;
  });
  child.stderr.on("data", (chunk) => {
    error += chunk;
  });
  const closed = once(child, "close");
  while (timesIn(out, "saved") < saves) {
    const more = await Promise.race([once(child.stdout, "data"), closed.then(() => null)]);
    if (more === null) break;
  }
  await pause(Math.random() * (saves === 0 ? 120 : 40));
  child.kill("SIGKILL");
  const [, signal] = await closed;
  if (signal !== "SIGKILL") throw new Error(`the logger ended by itself: ${error}`);
  // A line that was cut off was never read by anybody.
  const lines = out.split("\n").slice(0, -1);
  const numbers = (word: string) =>
    lines.filter((line) => line.startsWith(word)).map((line) => Number(line.split(" ")[1]));
  return {
    opened: numbers("open")[0] ?? null,
    saved: Math.max(0, ...numbers("saved")),
    faults: lines.filter((line) => line.startsWith("fault")),
  };
}

const timesIn = (text: string, word: string): number => text.split(word).length - 1;

/** Kills the logger of one case again and again; what was found, and the last sequence number reported saved. */
async function lane(kills: number): Promise<{ kills: number; saved: number }> {
  let path = "";
  let saved = 0;
  let all = 0;
  for (let kill = 0; kill < kills; kill++) {
    if (kill % KILLS_A_CASE === 0) {
      path = await newCase();
      all += saved;
      saved = 1;
    }
    const told = await logAndKill(path, SAVES_BEFORE[kill % SAVES_BEFORE.length] as number);
    expect(told.faults).toEqual([]);
    if (told.opened !== null) expect(told.opened).toBeGreaterThanOrEqual(saved);
    saved = Math.max(saved, told.saved);

    const found = await openCase(path);
    if (!found.ok) throw new Error(`after kill ${kill + 1}: ${found.fault}`);
    const { entries } = found.value.file;
    expect(chainFault(found.value.file)).toBeNull();
    expect(entries.length).toBeGreaterThanOrEqual(saved);
    expect(entries.slice(1)).toMatchObject(entries.slice(1).map(({ seq }) => noteAt(seq)));
  }
  return { kills, saved: all + saved };
}

test(`${KILLS} kills at random instants lose nothing that was reported saved`, async () => {
  const lanes = await Promise.all(Array.from({ length: LANES }, () => lane(KILLS / LANES)));
  const saved = lanes.reduce((sum, one) => sum + one.saved, 0);
  expect(lanes.reduce((sum, one) => sum + one.kills, 0)).toBe(KILLS);
  // What was waited for alone comes to ten saves in five kills.
  expect(saved).toBeGreaterThanOrEqual(2 * KILLS);
}, 900_000);

test("what the kills left behind is swept when the folder is opened later", async () => {
  const hourAgo = Date.now() / 1000 - 3600;
  for (const name of readdirSync(scratch.folder)) utimesSync(join(scratch.folder, name), hourAgo, hourAgo);
  await openFolder(scratch.folder);
  const left = readdirSync(scratch.folder).filter((name) => name.startsWith("case-"));
  expect(left.filter((name) => !/\.json(\.lock|\.before)?$/.test(name))).toEqual([]);
});

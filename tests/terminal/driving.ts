// Driving the console as a perfusionist does, and reading off its screen what they would read.

import { mkdir, mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { openClock } from "../../src/store/clock.ts";
import { createCase } from "../../src/store/open-case.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { keys, type RunningConsole } from "./harness.ts";

/** Far longer than anything takes: other tests may have the machine to themselves for a while. */
export const PATIENCE = 30_000;

export const enter = keys.enter;

/** A folder of the test's own, with room beside it, and what removes both. */
export async function caseFolder(): Promise<{ dir: string; remove(): Promise<void> }> {
  const around = await mkdtemp(join(tmpdir(), "pumpside-terminal-"));
  const dir = join(around, "cases");
  await mkdir(dir, { mode: 0o700 });
  return { dir, remove: () => rm(around, { recursive: true, force: true }) };
}

/** A case that has just been made; gives its path. */
export async function newCase(dir: string, label: string): Promise<string> {
  const now = openClock().now();
  const made = await createCase({ folder: dir, label, protocol: adultProtocol, operator: "KM", now });
  if (!made.ok) throw new Error(made.fault);
  return made.value.path;
}

/** The case as it is on the disk. */
export async function caseAt(path: string): Promise<CaseFile> {
  const read = await readCaseFile(path);
  if (!read.ok) throw new Error(read.fault);
  return read.value.file;
}

/** The one case of a folder. */
export async function onlyCaseIn(dir: string): Promise<string> {
  const names = (await readdir(dir)).filter((name) => name.endsWith(".json"));
  if (names.length !== 1) throw new Error(`${names.length} cases in the folder: ${names.join(", ")}`);
  return join(dir, names[0] as string);
}

/** Looks into a file until it holds a text. */
export async function untilHolds(path: string, text: string): Promise<void> {
  for (const deadline = performance.now() + PATIENCE; performance.now() < deadline; await sleep(10)) {
    const held = await readFile(path, "utf8").catch(() => "");
    if (held.includes(text)) return;
  }
  throw new Error(`the file never held ${text}`);
}

/** Whether the first row says that so many entries are on the disk. */
export const says =
  (words: string) =>
  ([first = ""]: string[]): boolean =>
    new RegExp(`${words}(?!\\d)`).test(first);

export const saved = (count: number) => says(`saved ${count}`);

/** Whether a line is open that begins with so much. */
export const lineOpen =
  (begins: string) =>
  (screen: string[]): boolean =>
    screen.some((row) => row.startsWith(`▸ ${begins}`));

/** When a stroke was typed, in milliseconds since the epoch: the first key lies between the first two. */
export type Typed = { readonly sent: number; readonly opened: number; readonly entered: number };

/** Types a stroke whole, `d300 r @-2`, and waits until `count` entries are on the disk. */
export async function stroke(console: RunningConsole, text: string, count: number): Promise<Typed> {
  const [key = "", ...rest] = text;
  const sent = Date.now();
  console.raw(key);
  await console.waitFor(lineOpen(`${key} `), PATIENCE);
  const opened = Date.now();
  await console.type(rest.join(""));
  const entered = Date.now();
  console.raw(enter);
  await console.waitFor(saved(count), PATIENCE);
  return { sent, opened, entered };
}

/** Fills a form field by field, by the labels on the screen, and writes it. */
export async function form(
  console: RunningConsole,
  key: string,
  values: Readonly<Record<string, string>>,
  count: number,
): Promise<void> {
  console.raw(key);
  await console.waitFor(lineOpen(`${key} `), PATIENCE);
  for (const [label, value] of Object.entries(values)) {
    await goTo(console, label);
    await console.type(value);
    await console.waitFor(
      (screen) => screen.some((row) => row.startsWith("▸ ") && row.includes(`${label} ${value}`)),
      PATIENCE,
    );
  }
  console.raw(";");
  await goTo(console, "time or note");
  console.raw(enter);
  await console.waitFor(saved(count), PATIENCE);
}

/** The field of an open form that is being typed, by the label in front of it. */
const fieldIn = (screen: string[]): string =>
  /^▸ . .*? · (.*?)(?: {3}.*)?$/.exec(screen.find((row) => row.startsWith("▸ ")) ?? "")?.[1] ?? "";

async function goTo(console: RunningConsole, label: string): Promise<void> {
  for (let tries = 0; tries < 60; tries++) {
    const field = fieldIn(console.screen());
    if (field === label || field.startsWith(`${label} `)) return;
    if (label !== "time or note") console.raw(keys.tab);
    await console.waitFor((screen) => fieldIn(screen) !== field, PATIENCE);
  }
  throw new Error(`the form has no field "${label}"`);
}

export type Read = {
  readonly phase: string;
  /** The clock in the first row, in seconds of the day. */
  readonly clock: number;
  readonly bypass: string;
  readonly clamp: string;
  /** Since the last dose, or how long the running one has run. */
  readonly dose: string;
  readonly act: string;
};

const TILES = /(BYPASS) .*(CLAMP) .*(SINCE DOSE|DOSE RUNNING) .*(ACT)/d;

/** Reads the first rows of the run screen at 80 columns. */
export function readOff(screen: string[]): Read {
  const place = screen.findIndex((row) => TILES.test(row));
  const found = TILES.exec(screen[place] ?? "");
  if (!found?.indices) throw new Error(`no clocks on the screen:\n${screen.join("\n")}`);
  const starts = found.indices.slice(1).map((one) => one?.[0] ?? 0);
  const values = screen[place + 1] ?? "";
  const [bypass = "", clamp = "", dose = "", act = ""] = starts.map((start, nth) =>
    values.slice(start, starts[nth + 1]).trim(),
  );
  const [first = ""] = screen;
  return {
    phase: first.trim().split("  ")[0] ?? "",
    clock: seconds(first.slice(-8)),
    bypass,
    clamp,
    dose,
    act,
  };
}

const DAY = 86_400;

/** Seconds of a stopwatch or a clock, `1:02:14`. */
export const seconds = (text: string): number =>
  text.split(":").reduce((sum, part) => sum * 60 + Number(part), 0);

/** Seconds from a recorded time to a clock of the same place. */
export function passed(at: string, clock: number): number {
  const from = seconds(at.slice(11, 23));
  // A clock told in whole seconds can stand a fraction before a moment of the same second: that is no day.
  return ((clock - from + 1.5 * DAY) % DAY) - DAY / 2;
}

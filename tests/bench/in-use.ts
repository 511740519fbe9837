// A console in use, in a real terminal: keys, saving, ticks, idle work and memory.

import { setTimeout as sleep } from "node:timers/promises";
import { bundlePath } from "../../.ci/bundle.js";
import { bareWrite } from "./bare-write.ts";
import { type Times, timesOf } from "./table.ts";
import { begins, type InTerminal, inTerminal, memoryOf, says, workOf } from "./terminal.ts";

const KEYS = 300;
const SAVES = 60;
/** V8 works for a while at what was used last. */
const SETTLING_SECONDS = 20;
const IDLE_SECONDS = 20;

export type InUse = {
  readonly key: Times;
  readonly live: Times;
  readonly saved: Times;
  readonly bareWrite: Times;
  readonly idle: Idle;
  readonly memory: number;
  readonly grown: number;
};

/** Bytes a second and percent of a core. */
export type Idle = { readonly bytes: number; readonly percent: number };

/** Measures a console on the case of `count` entries at `path`. */
export async function inUse(path: string, count: number): Promise<InUse> {
  const console = inTerminal(process.execPath, [bundlePath, "run", path]);
  await console.until("", says(`saved ${count} `));
  await sleep(1500);
  const key = await keysIn(console, KEYS);
  const live = await liveKeysIn(console);
  const memory = await memoryOf(console.pid);
  const [saved, bare] = await savesIn(console, path, count);
  const idle = await idling(console);
  const grown = await memoryOf(console.pid);
  await console.end();
  return { key, live, saved, bareWrite: bare, idle, memory, grown };
}

/** From a key of an open line to the screen that shows it. */
async function keysIn(console: InTerminal, count: number): Promise<Times> {
  const times: number[] = [];
  await console.until("u", begins("▸ u urine"));
  for (let key = 0; key < count; key++) {
    await sleep(25);
    const [pressed, shown] = key % 2 === 0 ? ["5", "▸ u urine 5"] : ["\x7f", "▸ u urine ▏"];
    times.push(
      await console.until(pressed, key % 2 === 0 ? begins(shown) : (row) => !begins("▸ u urine 5")(row)),
    );
  }
  await console.until("\x1b", (row) => !begins("▸ u urine")(row));
  return timesOf(times);
}

/** The same while the panel of live figures is shown. */
async function liveKeysIn(console: InTerminal): Promise<Times> {
  for (let tabs = 0; tabs < 8 && !(await shows(console, "── live")); tabs++) await sleep(50);
  const times = await keysIn(console, KEYS / 3);
  for (let tabs = 0; tabs < 8 && !(await shows(console, "── log")); tabs++) await sleep(50);
  return times;
}

/** Presses Tab once; whether the panel is there now. */
async function shows(console: InTerminal, title: string): Promise<boolean> {
  let before = "";
  await console.until("", (row) => {
    before = panelOf(row);
    return true;
  });
  let now = "";
  await console.until("\t", (row) => {
    now = panelOf(row);
    return now !== "" && now !== before;
  });
  return now.startsWith(title);
}

const panelOf = (row: (place: number) => string): string =>
  Array.from({ length: 24 }, (_, place) => row(place)).find((line) => line.startsWith("── ")) ?? "";

/** From Enter to "saved", and bare writes of the same bytes between them. */
async function savesIn(console: InTerminal, path: string, count: number): Promise<readonly [Times, Times]> {
  const saves: number[] = [];
  const bare: number[] = [];
  for (let save = 1; save <= SAVES; save++) {
    await sleep(20);
    await console.until("a", begins("▸ a ACT"));
    await console.until("480", begins("▸ a ACT 480"));
    saves.push(await console.until("\r", says(`saved ${count + save} `)));
    bare.push(await bareWrite(path));
  }
  return [timesOf(saves), timesOf(bare)];
}

/** Bytes a second, and the part of one core in percent, while nobody types. */
async function idling({ pid, bytes }: Pick<InTerminal, "pid" | "bytes">): Promise<Idle> {
  await sleep(SETTLING_SECONDS * 1000);
  const [workBefore, bytesBefore] = [await workOf(pid), bytes()];
  await sleep(IDLE_SECONDS * 1000);
  return {
    bytes: (bytes() - bytesBefore) / IDLE_SECONDS,
    percent: ((await workOf(pid)) - workBefore) / IDLE_SECONDS / 10,
  };
}

/** The same for a bare Ink program that draws a clock once a second. */
export async function idleInk(program: string): Promise<Idle> {
  const other = inTerminal(process.execPath, [program]);
  await other.until("", begins("hello there"));
  const idle = await idling(other);
  await other.end();
  return idle;
}

/** The same for a general terminal program that draws once a second; `null` where none is installed. */
export async function idleOfOthers(): Promise<{ name: string; idle: Idle } | null> {
  for (const [name, words] of [
    ["htop", ["-d", "10"]],
    ["top", ["-d", "1"]],
  ] as const) {
    const other = inTerminal(name, words);
    try {
      await sleep(1500);
      const found = { name: `${name} once a second`, idle: await idling(other) };
      await other.end();
      return found;
    } catch {
      // Not installed: the next one.
    }
  }
  return null;
}

// A whole adult case typed at 80 by 24, in two sessions with a kill between them: nothing is lost, every entry has the
// time of its first key, the clocks go on as if nothing had happened, and the balances are those of a table made by hand.

import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { bundlePath } from "../../.ci/bundle.js";
import { msOf } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import {
  caseAt,
  caseFolder,
  enter,
  form,
  lineOpen,
  onlyCaseIn,
  PATIENCE,
  passed,
  readOff,
  saved,
  seconds,
  stroke,
  type Typed,
  untilHolds,
} from "./driving.ts";
import { keys, startConsole, stopConsoles } from "./harness.ts";
import { AFTER_THE_KILL, BEFORE_BYPASS, BY_HAND, ON_BYPASS, ON_THE_SCREEN, TORN } from "./whole-case.ts";

const run = promisify(execFile);
const ROW_OF_LOG = /^\d\d:\d\d:\d\d. +#(\d+) /;

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  folder = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

/** The time that an entry says it happened at, before what was typed moved it back. */
const firstKeyOf = ({ at, typed }: CaseFile["entries"][number]): number =>
  msOf(at) + Number(/@-(\d+)/.exec(typed)?.[1] ?? 0) * 60_000;

/** How long ago, in seconds, an entry of the case happened at the clock of a screen. */
function ago(file: CaseFile, test: (entry: CaseFile["entries"][number]) => boolean, clock: number): number {
  const entry = file.entries.findLast(test);
  if (!entry) throw new Error("no such entry");
  return passed(entry.at, clock);
}

const isSpan = (what: string, state: "on" | "off") => (entry: CaseFile["entries"][number]) =>
  entry.kind === "span" && entry.what === what && entry.state === state;

const pumpside = (...words: string[]) =>
  run(process.execPath, [bundlePath, ...words], { env: { ...process.env, PUMPSIDE_DIR: folder.dir } });

describe("a whole adult case", { timeout: 240_000 }, () => {
  const typedAt: Typed[] = [];
  let count = 0;

  test("is typed up to a running dose and a line half typed, and then the console is killed", async () => {
    const console = startConsole({ dir: folder.dir });
    await console.waitFor("n makes a new case", PATIENCE);
    console.raw("n");
    await console.waitFor("your initials", PATIENCE);
    await console.type(`km valve 2${enter}`);
    await console.waitFor(saved(1), PATIENCE);
    await form(console, "k", { weight: "80", height: "178", allergies: "latex" }, 2);
    count = (await caseAt(await onlyCaseIn(folder.dir))).entries.length;

    for (const line of [...BEFORE_BYPASS, ...ON_BYPASS.slice(0, 7)])
      typedAt.push(await stroke(console, line, ++count));
    await form(console, "s", { flow: "4.75", MAP: "58", art: "33.6" }, ++count);
    await form(console, "g", { pH: "7.41", pCO2: "39", Hb: "9.0" }, ++count);
    for (const line of ON_BYPASS.slice(7)) typedAt.push(await stroke(console, line, ++count));

    await console.type(TORN.slice(0, 4));
    await console.waitFor(lineOpen(`v volume in ${TORN.slice(1, 4)}`), PATIENCE);
    await untilHolds(`${await onlyCaseIn(folder.dir)}.half-typed`, `"${TORN.slice(1, 4)}"`);
    console.kill("SIGKILL");
    expect(await console.exited).toMatchObject({ signal: 9 });
    expect((await caseAt(await onlyCaseIn(folder.dir))).entries).toHaveLength(count);
  });

  test("goes on after the kill with its clocks right and its half-typed line, to the last return", async () => {
    const console = startConsole({ dir: folder.dir });
    await console.waitFor("valve 2", PATIENCE);
    console.raw(enter);
    // The lock of the console that was killed still lies there.
    await console.waitFor("Enter takes it over", PATIENCE);
    console.raw(enter);
    await console.waitFor(saved(count), PATIENCE);
    const screen = await console.settled();
    const file = await caseAt(await onlyCaseIn(folder.dir));
    const { clock, bypass, clamp, dose, phase, act } = readOff(screen);
    expect({ phase, act }).toEqual({ phase: "ARRESTED", act: "530 s" });
    for (const [shown, since] of [
      [bypass, ago(file, isSpan("bypass", "on"), clock)],
      [clamp, ago(file, isSpan("clamp", "on"), clock)],
      [dose, ago(file, ({ kind }) => kind === "dose", clock)],
    ] as const) {
      // Both are told in whole seconds of the same moment, so they can lie less than one apart.
      expect(Math.abs(seconds(shown) - since)).toBeLessThan(1);
    }

    await console.waitFor(`Esc brings back: v ${TORN.slice(1, 4)}`, PATIENCE);
    console.raw(keys.escape);
    await console.waitFor(lineOpen("v "), PATIENCE);
    await console.type(`${TORN.slice(4)}${enter}`);
    await console.waitFor(saved(++count), PATIENCE);
    for (const line of AFTER_THE_KILL) typedAt.push(await stroke(console, line, ++count));

    const last = (await console.waitFor("AFTER", PATIENCE)).join("\n");
    for (const part of ON_THE_SCREEN) expect(last).toContain(part);
    console.raw("q");
    await console.waitFor("Enter leaves", PATIENCE);
    console.raw(enter);
    await console.waitFor("valve 2", PATIENCE);
    console.raw("q");
    expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
  });

  test("has every entry in its file, as it was typed and in the order of typing", async () => {
    const { entries } = await caseAt(await onlyCaseIn(folder.dir));
    const strokes = entries.filter(({ typed }) => typed !== "" && !/^[ksg] /.test(typed));
    expect(entries.length).toBeGreaterThanOrEqual(60);
    expect(entries).toHaveLength(count);
    expect(strokes.map(({ typed }) => typed.replace(/^z#\d+ /, "z"))).toEqual([
      ...BEFORE_BYPASS,
      ...ON_BYPASS,
      TORN,
      ...AFTER_THE_KILL,
    ]);
    const values = entries.filter(({ kind }) => kind === "readings" || kind === "gas");
    expect(values).toMatchObject([
      { values: { flow: 4.75, meanPressure: 58, arterialTemperature: 33.6 } },
      { values: { ph: 7.41, carbonDioxide: 39, haemoglobin: 9 } },
    ]);
  });

  test("stamps every entry with its first key, not with Enter", async () => {
    const { entries } = await caseAt(await onlyCaseIn(folder.dir));
    const whole = entries.filter(({ typed }) => typed !== "" && !/^[ksg] /.test(typed) && typed !== TORN);
    expect(whole).toHaveLength(typedAt.length);
    for (const [place, entry] of whole.entries()) {
      const { sent, opened, entered } = typedAt[place] as Typed;
      expect(msOf(entry.loggedAt)).toBeGreaterThanOrEqual(msOf(entry.at));
      // The console's clock and this one's are read apart from each other.
      expect(firstKeyOf(entry)).toBeGreaterThanOrEqual(sent - 50);
      expect(firstKeyOf(entry)).toBeLessThanOrEqual(opened + 50);
      expect(msOf(entry.loggedAt)).toBeGreaterThanOrEqual(entered - 50);
    }
    const torn = entries.find(({ typed }) => typed === TORN);
    const before = entries[(torn?.seq ?? 0) - 2];
    expect(msOf(torn?.at ?? "")).toBeGreaterThanOrEqual(msOf(before?.loggedAt ?? ""));
    expect(msOf(torn?.at ?? "")).toBeLessThan(typedAt.at(-AFTER_THE_KILL.length)?.sent ?? 0);
  });

  test("ends with the balances of the table made by hand", async () => {
    const { stdout } = await pumpside("figures", "valve 2", "--json");
    const { figures, phase } = JSON.parse(stdout) as {
      phase: string;
      figures: Record<string, { value: number | null }>;
    };
    const values = Object.keys(BY_HAND).map((name) => [name, figures[name]?.value]);
    expect(Object.fromEntries(values)).toEqual(BY_HAND);
    expect(phase).toBe("after");
  });

  test("is read back entry by entry by review, and check says that it is whole", async () => {
    const console = startConsole({ dir: folder.dir, args: ["review", "valve 2"] });
    await console.waitFor("[summary]", PATIENCE);
    console.raw(keys.tab);
    await console.waitFor("[timeline]", PATIENCE);
    const place = (screen: string[]) => Number(/· (\d+) in \d+ entries/.exec(screen.join("\n"))?.[1]);
    const seen = new Set<number>();
    console.raw(keys.home);
    for (let at = 1; ; console.raw(keys.pageDown)) {
      await console.waitFor((rows) => place(rows) >= at, PATIENCE);
      const screen = await console.settled();
      for (const row of screen) {
        const number = ROW_OF_LOG.exec(row)?.[1];
        if (number !== undefined) seen.add(Number(number));
      }
      at = place(screen) + 1;
      if (at > count) break;
    }
    expect([...seen].toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, nth) => nth + 1));
    console.raw("q");
    expect(await console.exited).toEqual({ exitCode: 0, signal: undefined });
    const { stdout } = await pumpside("check", "valve 2");
    expect(stdout).toContain(`${count} entries`);
    expect(stdout).toContain("whole");
  });
});

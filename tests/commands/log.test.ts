// Strokes from a script: the same grammar and the same way to the record as on the console.

import { copyFile, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { logged } from "../../src/console/read-stroke.ts";
import { readRun } from "../../src/figures/run.ts";
import { fromIso, type Instant, msOf } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { caseAt, saved } from "../terminal/driving.ts";
import { startConsole, stopConsoles } from "../terminal/harness.ts";
import { CASE_FAULT, caseFolder, DONE, expectDone, expectRefused, WRONG_CALL } from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  cases = await caseFolder();
});
afterAll(() => cases.remove());
afterEach(stopConsoles);

const newCase = async (label: string): Promise<string> =>
  expectDone(await cases.pumpside("new", "--label", label, "--by", "KM")).trim();

/** A whole run, each stroke with the clock it is logged at, a day after any case of today was made. */
const WHOLE_RUN = [
  ["08:00:00", "v1400f"],
  ["08:05:00", "h30000"],
  ["08:09:30", "a512 @-1"],
  ["08:12:00", "b"],
  ["08:12:40", "ffull"],
  ["08:20:00", "x"],
  ["08:20:30", "d"],
  ["08:24:00", "d800 a"],
  ["08:45:00", "d300 r ; slow"],
  ["08:47:00", "z250"],
  ["09:00:00", "u150"],
  ["09:10:00", "x"],
  ["09:30:00", "f0"],
  ["09:31:00", "b"],
  ["09:40:00", "r300"],
  ["09:45:00", "p250"],
  ["09:55:00", "a118"],
] as const;

const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
const nowOf = (clock: string) => `${tomorrow}T${clock}+02:00`;
const instantOf = (iso: string): Instant => {
  const instant = fromIso(iso);
  if (!instant) throw new Error(`"${iso}" is no time`);
  return instant;
};

/** Hashes come with saving. */
const withoutHashes = ({ entries }: CaseFile) =>
  entries.map((entry) => {
    const { prev: _, ...facts } = entry as Record<string, unknown>;
    return facts;
  });

describe("a whole run logged stroke by stroke", () => {
  let path: string;
  let opened: CaseFile;
  let file: CaseFile;
  beforeAll(async () => {
    path = await newCase("logged");
    opened = await caseAt(path);
    for (const [place, [clock, stroke]] of WHOLE_RUN.entries()) {
      const out = expectDone(await cases.pumpside("log", "logged", stroke, "--now", nowOf(clock)));
      expect(out).toMatch(new RegExp(`^saved #${place + 2} \\d\\d:\\d\\d:\\d\\d \\S[^\n]+\n$`));
    }
    file = await caseAt(path);
  });

  test("is entry for entry what the console's own grammar gives", () => {
    let replayed = opened;
    for (const [clock, stroke] of WHOLE_RUN) {
      const after = logged(replayed, stroke, instantOf(nowOf(clock)));
      if (!after.ok) throw new Error(after.fault);
      replayed = after.value;
    }
    expect(withoutHashes(file)).toEqual(withoutHashes(replayed));
  });

  test("has the times that were given, with their offset", () => {
    expect(file.entries.slice(1).map(({ typed }) => typed)).toEqual(WHOLE_RUN.map(([, stroke]) => stroke));
    expect(file.entries[4]).toMatchObject({
      kind: "span",
      at: `${tomorrow}T08:12:00.000+02:00`,
      loggedAt: `${tomorrow}T08:12:00.000+02:00`,
    });
    expect(file.entries[3]).toMatchObject({ at: `${tomorrow}T08:08:30.000+02:00`, seconds: 512 });
  });

  // By hand: in 1400 + crystalloid (800 + 250) / 5 = 210; out 150; bypass 08:12 to 09:31 = 79 min; clamp 50 min.
  test("gives figures as data that are those of the case, and those of a table made by hand", async () => {
    const at = nowOf("10:00:00");
    const out = expectDone(await cases.pumpside("figures", "logged", "--json", "--at", at));
    const { figures, phase } = JSON.parse(out);
    const run = readRun(file, instantOf(at).ms);
    expect(figures.fluidIn).toEqual(run.course.balances.fluidIn);
    expect(figures.netToPatient).toEqual(run.netToPatient);
    expect(phase).toBe(run.course.phase);
    const values = Object.fromEntries(
      Object.entries(figures).map(([name, figure]) => [name, (figure as { value: number }).value]),
    );
    expect(values).toMatchObject({
      bypassTime: 79 * 60,
      arrestTime: 50 * 60,
      arrestGiven: 1050,
      arrestCrystalloid: 210,
      fluidIn: 1610,
      urine: 150,
      net: 1460,
      returned: 300,
      heparinTotal: 30_000,
      protamineGiven: 250,
      lastAct: 118,
    });
  });

  test("gives the figures of an earlier moment as they stood then", async () => {
    const at = nowOf("08:46:00");
    const { figures, phase, entries } = JSON.parse(
      expectDone(await cases.pumpside("figures", "logged", "--json", "--at", at)),
    );
    const then = { ...file, entries: file.entries.filter(({ loggedAt }) => msOf(loggedAt) <= msOf(at)) };
    expect(phase).toBe(readRun(then, msOf(at)).course.phase);
    expect({ entries, arrest: figures.arrestGiven.value }).toEqual({ entries: 10, arrest: 1100 });
    expect(figures.bypassTime.value).toBe(34 * 60);
  });

  test("is whole, and no longer once an amount is changed by hand", async () => {
    expect(expectDone(await cases.pumpside("check", "logged"))).toMatch(
      /^The case is valid and whole: 18 entries, still open, seal [0-9a-f ]+\.\n$/,
    );
    const edited = join(cases.dir, "edited.json");
    await copyFile(path, edited);
    const text = await readFile(edited, "utf8");
    await writeFile(edited, text.replace('"amount":30000', '"amount":20000'));
    expectRefused(await cases.pumpside("check", edited), CASE_FAULT, /entry \d+/);
  });
});

describe("a stroke that cannot be logged", () => {
  beforeAll(() => newCase("refusing"));

  test.each<[string, string[], RegExp]>([
    ["with an amount that is none", ["hx"], /"x" is not an amount of heparin: type such as 28000/],
    ["with a key that is none", ["=3"], /"=" is not a stroke's key: pumpside keys lists them/],
    ["that is empty", [""], /no stroke was typed: begin with a stroke's key/],
    ["at a clock in words", ["b", "--now", "yesterday"], /"yesterday" is no time: type ISO 8601/],
    ["at a clock without an offset", ["b", "--now", "2026-03-04T10:42:30"], /is no time: type ISO 8601/],
    ["at a day that is none", ["b", "--now", "2026-02-30T10:42:30Z"], /is no time: type ISO 8601/],
    ["at a time of the line that is none", ["b @99:99"], /@99:99/],
    ["that would put right what nobody wrote", ["z300"], /nothing was logged: /],
  ])("%s is refused in one sentence, and nothing is written", async (_what, words, says) => {
    const [stroke = "", ...more] = words;
    const refused = await cases.pumpside("log", "refusing", stroke, ...more);
    expectRefused(refused, WRONG_CALL, says);
    expect(refused.err).toContain("nothing was logged");
    expect(expectDone(await cases.pumpside("check", "refusing"))).toContain("1 entries");
  });

  test("because a console holds the case, is refused and can be logged afterwards", async () => {
    const path = await newCase("held");
    const console = startConsole({ dir: cases.dir, args: ["run", "held"] });
    await console.waitFor(saved(1), 30_000);
    const refused = await cases.pumpside("log", "held", "b");
    expectRefused(refused, CASE_FAULT, /nothing was logged: another console has the case open/);
    expect((await caseAt(path)).entries).toHaveLength(1);
    console.kill("SIGTERM");
    await console.exited;
    expect(expectDone(await cases.pumpside("log", "held", "b"))).toMatch(/^saved #2 .* bypass on\n$/);
  });
});

test("scripts that log at once lose nothing that was reported saved", async () => {
  const path = await newCase("contended");
  const lines = ["u10", "u20", "u30", "u40"];
  const ended = await Promise.all(lines.map((line) => cases.pumpside("log", path, line)));
  const written = (await caseAt(path)).entries.slice(1).map(({ typed }) => typed);
  expect(written.toSorted()).toEqual(lines.filter((_line, place) => ended[place]?.code === DONE));
  for (const one of ended)
    if (one.code !== DONE) expectRefused(one, CASE_FAULT, /another console has the case open/);
  expect(written.length).toBeGreaterThan(0);
  expectDone(await cases.pumpside("check", path));
});

test("a closed case takes nothing more until it is reopened", async () => {
  const path = await newCase("closed");
  expectDone(await cases.pumpside("log", path, ".KM"));
  expectRefused(await cases.pumpside("log", path, "u100"), WRONG_CALL, /closed/);
  expectDone(await cases.pumpside("log", path, ".KM one more bag"));
  expectDone(await cases.pumpside("log", path, "u100"));
});

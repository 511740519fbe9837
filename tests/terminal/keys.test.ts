// Keys as terminals send them, glued, torn and pasted, and a terminal that changes its size under them.

import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { caseAt, caseFolder, enter, lineOpen, newCase, PATIENCE, saved } from "./driving.ts";
import { keys, type RunningConsole, startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
let path: string;
let console: RunningConsole;
let cases = 0;

beforeAll(async () => {
  folder = await caseFolder();
});
beforeEach(async () => {
  path = await newCase(folder.dir, `keys ${++cases}`);
  console = startConsole({ dir: folder.dir, args: ["run", path] });
  await console.waitFor(saved(1), PATIENCE);
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

const typedLines = async (): Promise<string[]> =>
  (await caseAt(path)).entries.slice(1).map(({ typed }) => typed);

describe("glued keys", () => {
  test("a number and Enter in one read write the entry", async () => {
    console.raw("a");
    await console.waitFor(lineOpen("a ACT"), PATIENCE);
    console.raw("512\r");
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["a512"]);
  });

  test("several strokes in one read write an entry each, in their order", async () => {
    console.raw("h28000\ra512\rb\rffull\r");
    await console.waitFor(saved(5), PATIENCE);
    expect(await typedLines()).toEqual(["h28000", "a512", "b", "ffull"]);
  });

  test("a line break of two characters is one Enter", async () => {
    console.raw("a480\r\nb\r\n");
    await console.waitFor(saved(3), PATIENCE);
    expect(await typedLines()).toEqual(["a480", "b"]);
  });
});

describe("torn keys", () => {
  test("an arrow torn after its Esc still moves the cursor, and nothing typed is lost", async () => {
    await console.type("a52");
    await console.waitFor(lineOpen("a ACT 52"), PATIENCE);
    console.raw("\x1b");
    await console.waitFor("Set aside", PATIENCE);
    console.raw("[D");
    await console.waitFor(lineOpen("a ACT 52"), PATIENCE);
    await console.type(`1${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["a512"]);
  });

  test("an arrow torn inside its sequence types no letter", async () => {
    await console.type("a52");
    console.raw("\x1b[");
    await sleep(100);
    console.raw("D");
    await console.type(`1${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["a512"]);
  });

  test("a letter of two bytes torn between them is one letter", async () => {
    await console.type("n");
    await console.waitFor(lineOpen("n note"), PATIENCE);
    const letter = Buffer.from("ä");
    console.raw(letter.subarray(0, 1));
    await sleep(100);
    console.raw(letter.subarray(1));
    await console.waitFor(lineOpen("n note ä"), PATIENCE);
    console.raw(enter);
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["nä"]);
  });
});

describe("Esc", () => {
  test("sets a line aside and brings it back with all that was typed, and with the time of its first key", async () => {
    await console.type("h28000");
    await console.waitFor(lineOpen("h heparin 28000"), PATIENCE);
    const opened = Date.now();
    console.raw(keys.escape);
    await console.waitFor("Esc brings back: h 28000", PATIENCE);
    await console.type(`a512${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    console.raw(keys.escape);
    await console.waitFor(lineOpen("h heparin 28000"), PATIENCE);
    console.raw(enter);
    await console.waitFor(saved(3), PATIENCE);
    const { entries } = await caseAt(path);
    expect(entries.slice(1).map(({ typed }) => typed)).toEqual(["a512", "h28000"]);
    expect(Date.parse(entries[2]?.at ?? "")).toBeLessThanOrEqual(opened + 50);
    expect(Date.parse(entries[2]?.at ?? "")).toBeLessThanOrEqual(Date.parse(entries[1]?.at ?? ""));
  });
});

describe("a paste", () => {
  const paste = (text: string) => console.raw(`\x1b[200~${text}\x1b[201~`);

  test("with line breaks writes nothing by itself, neither on an open line nor without one", async () => {
    paste("h28000\ra512\r");
    await console.waitFor("Pasted text is only taken", PATIENCE);
    console.raw("n");
    await console.waitFor(lineOpen("n note"), PATIENCE);
    paste("unit 447108\r\nchecked\r");
    await console.waitFor(lineOpen("n note unit 447108 checked"), PATIENCE);
    expect(await typedLines()).toEqual([]);
    console.raw(enter);
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["nunit 447108 checked"]);
  });

  test("that never ends gives the keyboard back", async () => {
    console.raw("n");
    await console.waitFor(lineOpen("n note"), PATIENCE);
    console.raw("\x1b[200~half a paste");
    await console.waitFor(lineOpen("n note half a paste"), PATIENCE);
    console.raw(enter);
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["nhalf a paste"]);
  });
});

describe("a terminal that changes its size", () => {
  test("keeps the line that is half typed, and draws it whole at every size", async () => {
    await console.type("h280");
    for (const [columns, rows] of [
      [120, 40],
      [40, 10],
      [200, 60],
      [20, 3],
      [80, 24],
    ] as const) {
      console.resize(columns, rows);
      const sight = columns < 80 ? "saved 1 > h 280" : "▸ h heparin 280";
      const screen = await console.waitFor(
        (seen) => seen.length === rows && seen.some((row) => row.startsWith(sight)),
        PATIENCE,
      );
      expect(screen.filter((row) => row.includes("280"))).not.toEqual([]);
      expect(screen.join("\n").match(/saved 1(?!\d)/g)).toHaveLength(1);
    }
    await console.type(`00${enter}`);
    await console.waitFor(saved(2), PATIENCE);
    expect(await typedLines()).toEqual(["h28000"]);
  });
});

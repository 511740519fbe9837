// A terminal that is too small for the screen still keeps the record: it says what is saved and what is being typed.

import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { caseAt, caseFolder, enter, newCase, PATIENCE } from "./driving.ts";
import { startConsole, stopConsoles } from "./harness.ts";

let folder: Awaited<ReturnType<typeof caseFolder>>;
beforeAll(async () => {
  folder = await caseFolder();
});
afterEach(stopConsoles);
afterAll(() => folder.remove());

test.each([
  { cols: 79, rows: 24 },
  { cols: 40, rows: 10 },
  { cols: 24, rows: 4 },
  { cols: 20, rows: 2 },
])("at $cols by $rows strokes are written, and an empty one stays open", async ({ cols, rows }) => {
  const path = await newCase(folder.dir, `${cols} by ${rows}`);
  const console = startConsole({ dir: folder.dir, args: ["run", path], cols, rows });
  const first = (text: string) => (screen: string[]) => screen[0] === text;
  await console.waitFor(first("saved 1"), PATIENCE);
  await console.type("h280");
  await console.waitFor(first("saved 1 > h 280"), PATIENCE);
  await console.type(`00${enter}`);
  await console.waitFor(first("saved 2"), PATIENCE);
  await console.type(`a${enter}`);
  await console.waitFor(first("saved 2 > a"), PATIENCE);
  // However the rows break.
  const refused = (screen: string[]) =>
    /type seconds such as 480\./.test(screen.join(" ").replace(/\s+/g, " "));
  if (rows >= 4) await console.waitFor(refused, PATIENCE);
  await console.type(`512${enter}b${enter}`);
  await console.waitFor(first("saved 4"), PATIENCE);
  expect((await caseAt(path)).entries.map(({ typed }) => typed)).toEqual(["", "h28000", "a512", "b"]);
  expect(console.screen().filter((row) => row.length > cols)).toEqual([]);
});

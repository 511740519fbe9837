// The index of a large folder: it always says what the cases say, and whatever happens to it, the list is the same.

import { appendFile, cp, mkdir, readFile, rename, stat, unlink, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { SUMMARISER } from "../../src/reports/case-summary.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { indexOf } from "../../src/store/case-index.ts";
import { listCases } from "../../src/store/case-list.ts";
import { newCasePath } from "../../src/store/folder.ts";
import { manyCase, writeCutShort, writeMany } from "../helpers/many-cases.ts";
import { scratchFolder, withEntry } from "./cases.ts";
import { testFolder } from "./test-folder.ts";

const MANY = 60;

let folder: string;
beforeEach(async () => {
  ({ folder } = await testFolder());
  await cp(made.folder, folder, { recursive: true });
});

let made: Awaited<ReturnType<typeof scratchFolder>>;
beforeAll(async () => {
  made = await scratchFolder();
  await writeMany(made.folder, MANY);
});
afterAll(() => made.remove());

/** Lists with the index, and tells how many cases had to be read for it. */
async function listed() {
  let read = 0;
  const of: typeof SUMMARISER.of = (file) => {
    read += 1;
    return SUMMARISER.of(file);
  };
  const cases = await listCases(folder, { summariser: { ...SUMMARISER, of } });
  return { cases, read };
}

/** The same from the files alone. */
async function fresh() {
  const other = await testFolder();
  await rename(indexOf(folder), join(other.folder, "index")).catch(() => undefined);
  const { cases } = await listed();
  await rename(join(other.folder, "index"), indexOf(folder)).catch(() => undefined);
  return cases;
}

const pathOf = (n: number) => newCasePath(folder, manyCase(n).id);

describe("the index", () => {
  test("spares reading every case a second time, and says the same", async () => {
    const first = await listed();
    expect(first.read).toBe(MANY);
    const second = await listed();
    expect(second.read).toBe(0);
    expect(second.cases).toEqual(first.cases);
    expect(second.cases).toHaveLength(MANY);
  });

  test("is for its owner only, as the cases are, and no case by its name", async () => {
    await listed();
    expect((await stat(indexOf(folder))).mode & 0o777).toBe(0o600);
    expect((await listCases(folder)).map(({ path }) => path)).not.toContain(indexOf(folder));
  });

  test("is not made where a handful of cases is read as quickly", async () => {
    for (let n = 10; n < MANY; n++) await unlink(pathOf(n));
    expect((await listed()).cases).toHaveLength(10);
    await expect(stat(indexOf(folder))).rejects.toMatchObject({ code: "ENOENT" });
  });

  test("reads again the one case that was written since, and drops one that is gone", async () => {
    await listed();
    const longer = withEntry(manyCase(7), { kind: "note", text: "came later" });
    await lowCase(pathOf(7), longer).write();
    await unlink(pathOf(9));
    const { cases, read } = await listed();
    expect(read).toBe(1);
    expect(cases).toHaveLength(MANY - 1);
    expect(cases.find(({ id }) => id === longer.id)).toMatchObject({ entries: longer.entries.length });
  });

  test("reads again a case whose time alone has changed", async () => {
    await listed();
    await utimes(pathOf(3), new Date(0), new Date(0));
    expect((await listed()).read).toBe(1);
  });

  test("never keeps what is damaged: a case cut short is looked at each time until it is whole", async () => {
    await writeCutShort(folder, "20260101-broken");
    await listed();
    const fault = { id: "20260101-broken", fault: "the file is not JSON, or was cut short." };
    expect((await listed()).cases).toContainEqual(expect.objectContaining(fault));
  });

  test.each([
    ["cut short", async (path: string) => writeFile(path, (await readFile(path)).subarray(0, 500))],
    ["with something behind it", (path: string) => appendFile(path, "{}")],
    ["with one figure changed", changeAFigure],
    ["of another program", (path: string) => writeFile(path, '{"some":"thing"}')],
    ["that is empty", (path: string) => writeFile(path, "")],
  ])("%s is made again", async (_, harm) => {
    const before = await listed();
    await harm(indexOf(folder));
    const after = await listed();
    expect(after.read).toBe(MANY);
    expect(after.cases).toEqual(before.cases);
    expect((await listed()).read).toBe(0);
  });

  test("of another version is made again", async () => {
    await listCases(folder, { summariser: { ...SUMMARISER, name: "an older one" } });
    expect((await listed()).read).toBe(MANY);
  });

  test("that can't be written keeps nobody from listing", async () => {
    await mkdir(indexOf(folder));
    expect((await listed()).cases).toHaveLength(MANY);
  });

  test("keeps what was read of a list that was stopped, and what it knew before", async () => {
    const stopping = new AbortController();
    const onProgress = (done: number) => done === 20 && stopping.abort();
    const stopped = await listCases(folder, { summariser: SUMMARISER, onProgress, signal: stopping.signal });
    expect(stopped.length).toBeLessThan(MANY);
    const { read, cases } = await listed();
    expect(read).toBe(MANY - stopped.length);
    expect(cases).toHaveLength(MANY);
    await listCases(folder, { summariser: SUMMARISER, signal: AbortSignal.abort() });
    expect((await listed()).read).toBe(0);
  });

  test("tells how far the list has come, to its end", async () => {
    const heard: number[] = [];
    await listCases(folder, { summariser: SUMMARISER, onProgress: (done) => heard.push(done) });
    expect(heard).toEqual(Array.from({ length: MANY }, (_, i) => i + 1));
  });
});

async function changeAFigure(path: string): Promise<void> {
  const text = await readFile(path, "utf8");
  await writeFile(path, text.replace(/"bypassTime":\d/, '"bypassTime":9'));
}

test("whatever happens in the folder, the list with the index is the list without it", async () => {
  const change = fc.record({
    what: fc.constantFrom("write", "remove", "damage", "make", "list"),
    n: fc.integer({ min: 0, max: MANY + 5 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(change, { maxLength: 6 }), async (changes) => {
      for (const { what, n } of changes) {
        if (what === "write")
          await lowCase(pathOf(n), withEntry(manyCase(n), { kind: "note", text: `${n}` })).write();
        if (what === "remove") await unlink(pathOf(n)).catch(() => undefined);
        if (what === "damage") await writeCutShort(folder, manyCase(n).id);
        if (what === "make") await writeMany(folder, 1, n);
        if (what === "list") await listed();
      }
      const { cases } = await listed();
      expect(cases).toEqual(await fresh());
    }),
    { numRuns: 6 },
  );
});

// What another program puts in the place of a case is noticed, kept, and told once.

import { readdir, readFile, rename, rm, utimes, writeFile } from "node:fs/promises";
import { basename } from "node:path";
import { beforeEach, expect, test } from "vitest";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { aCase } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { reopened } from "./reopened.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

/** A case that was opened, with what was told. */
async function opened() {
  await lowCase(path, withNotes(aCase(), 2)).write();
  return reopened(path);
}

const asides = async () => (await readdir(folder)).filter((name) => name.includes("replaced"));

async function entriesOnDisk(): Promise<number> {
  const read = await readCaseFile(path);
  if (!read.ok) throw new Error(read.fault);
  expect(chainFault(read.value.file)).toBeNull();
  return read.value.file.entries.length;
}

test("a file that nobody else touches is saved without a word", async () => {
  const { save, told } = await opened();
  for (let saves = 0; saves < 5; saves++) await save();
  expect([told, await asides(), await entriesOnDisk()]).toEqual([[], [], 8]);
});

test("a file replaced by another is kept each time, under a new name", async () => {
  const { save, told } = await opened();
  for (const text of ["one", "two"]) {
    await writeFile(`${path}.other`, text);
    await rename(`${path}.other`, path);
    await save();
    await save();
  }
  expect(await asides()).toEqual([1, 2].map((number) => `${basename(path)}.replaced-${number}`));
  expect(await readFile(`${path}.replaced-2`, "utf8")).toBe("two");
  expect(told).toHaveLength(2);
  expect(await entriesOnDisk()).toBe(7);
});

test("a file written into is kept as it was found, and the last good copy is not made of it", async () => {
  const { save, told } = await opened();
  await save();
  const before = await readFile(`${path}.before`, "utf8");
  await writeFile(path, "overwritten");
  await save();
  expect(await readFile(`${path}.replaced-1`, "utf8")).toBe("overwritten");
  expect(await readFile(`${path}.before`, "utf8")).toBe(before);
  expect(told).toEqual([expect.stringMatching(/^Another program has changed the file/)]);
});

test("a file whose time alone was changed, as some shares do, is ours", async () => {
  const { save, told } = await opened();
  await utimes(path, 1, 1);
  await save();
  expect([told, await asides()]).toEqual([[], []]);
});

test("a file that was removed is written again", async () => {
  const { save, told } = await opened();
  await rm(path);
  await save();
  expect(told).toEqual([expect.stringMatching(/^Another program has removed the file/)]);
  expect(await entriesOnDisk()).toBe(4);
});

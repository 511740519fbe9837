// What is half typed waits beside the case, and is gone when there is nothing left of it.

import { mkdir, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { basename } from "node:path";
import { beforeEach, expect, test } from "vitest";
import { keepBeside, readBeside } from "../../src/store/half-typed.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

const besideOf = () => `${path}.half-typed`;

test("it comes back as it was, for its owner only", async () => {
  const keeper = keepBeside(path);
  keeper.keep([{ text: "d 30" }]);
  await keeper.close();
  expect(await readBeside(path)).toEqual([{ text: "d 30" }]);
  expect((await stat(besideOf())).mode & 0o777).toBe(0o600);
});

test("it is written once typing pauses, with what was typed last", async () => {
  const keeper = keepBeside(path);
  for (const text of ["d", "d 3", "d 30"]) keeper.keep([{ text }]);
  expect(await readdir(folder)).toEqual([]);
  const isThere = async () => (await readdir(folder)).includes(basename(besideOf()));
  while (!(await isThere())) await new Promise((again) => setTimeout(again, 20));
  expect(JSON.parse(await readFile(besideOf(), "utf8"))).toEqual([{ text: "d 30" }]);
  await keeper.close();
});

test("nothing half typed leaves no file", async () => {
  const keeper = keepBeside(path);
  keeper.keep([{ text: "d 30" }]);
  await keeper.close();
  const next = keepBeside(path);
  next.keep([{ text: "d 3" }]);
  next.keep([]);
  await next.close();
  expect(await readdir(folder)).toEqual([]);
});

test.each([
  ["nothing", null],
  ["no JSON", "{"],
  ["far too much", JSON.stringify("x".repeat(300_000))],
])("%s beside the case gives nothing", async (_, text) => {
  if (text !== null) await writeFile(besideOf(), text);
  expect(await readBeside(path)).toBeNull();
});

test("a place that can't be written to is passed over", async () => {
  await mkdir(besideOf());
  const keeper = keepBeside(path);
  keeper.keep([{ text: "d 30" }]);
  await keeper.close();
  expect(await readBeside(path)).toBeNull();
});

// The second copy: the same file in another folder, in the background, never in the way of the first.

import { mkdir, readdir, readFile, rename } from "node:fs/promises";
import { join, resolve } from "node:path";
import { beforeEach, expect, test } from "vitest";
import { lowCase } from "../../src/store/case-adapter.ts";
import { copyFolder, copyOf, copyOnce, keepCopy } from "../../src/store/second-copy.ts";
import { aCase } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let copies: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
  copies = join(folder, "copies");
  await mkdir(copies);
});

const until = async (done: () => boolean): Promise<void> => {
  while (!done()) await new Promise((again) => setTimeout(again, 10));
};

test("the folder is the one asked for, else that of the environment, else there is none", () => {
  expect(copyFolder("a", { PUMPSIDE_COPY_DIR: "b" })).toBe(resolve("a"));
  expect(copyFolder(undefined, { PUMPSIDE_COPY_DIR: "b" })).toBe(resolve("b"));
  expect(copyFolder(undefined, {})).toBeNull();
});

test("a case is copied as it is when it is opened, and is the same file after each save", async () => {
  const told: (number | string)[] = [];
  const file = withNotes(aCase(), 2);
  const keeper = keepCopy(copies, {
    path,
    file,
    onSaved: (seq) => told.push(seq),
    onFault: (words) => told.push(words),
  });
  await until(() => told.length === 1);
  const longer = withNotes(file, 3);
  keeper.keep(longer);
  await until(() => told.length === 2);
  expect(told).toEqual([3, 6]);
  await lowCase(path, longer).write();
  expect(await readFile(copyOf(path, copies))).toEqual(await readFile(path));
  expect(await keeper.close()).toEqual({ unsaved: 0, hanging: false });
});

test("a folder that is gone is told, not made, and caught up when it is back", async () => {
  await rename(copies, `${copies}-away`);
  const told: (number | string)[] = [];
  const keeper = keepCopy(copies, {
    path,
    file: withNotes(aCase(), 2),
    onSaved: (seq) => told.push(seq),
    onFault: (words) => told.push(words),
  });
  await until(() => told.length > 0);
  expect(told[0]).toBe("the folder is gone");
  expect(await readdir(folder)).toEqual(["copies-away"]);
  await rename(`${copies}-away`, copies);
  await until(() => told.at(-1) === 3);
  await keeper.close();
});

test("one state is copied in one go, or it is said why not", async () => {
  expect(await copyOnce(copies, path, withNotes(aCase(), 1))).toBeNull();
  expect(await copyOnce(join(folder, "nowhere"), path, aCase())).toBe("the folder is gone");
});

// The folder of cases: where it is, what its files are called, and what is swept from it.

import { mkdir, readdir, stat, utimes, writeFile } from "node:fs/promises";
import { homedir } from "node:os";
import { basename, join, resolve } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { caseFolder, idInName, newCaseId, newCasePath, openFolder } from "../../src/store/folder.ts";
import { lockCase } from "../../src/store/lock.ts";
import { START } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
beforeEach(async () => {
  ({ folder } = await testFolder());
});

describe("the folder", () => {
  test("is the one asked for, else the environment's, else the platform's own", () => {
    expect(caseFolder("here", { PUMPSIDE_DIR: "/there" })).toBe(resolve("here"));
    expect(caseFolder(undefined, { PUMPSIDE_DIR: "/there" })).toBe(resolve("/there"));
    expect(caseFolder("", { PUMPSIDE_DIR: "" })).toBe(caseFolder(undefined, {}));
    expect(caseFolder(undefined, {})).toContain("pumpside");
    expect(caseFolder(undefined, {}).startsWith(homedir()) || process.env.XDG_DATA_HOME).toBeTruthy();
  });

  test("is made for its owner only", async () => {
    const deep = join(folder, "a", "b");
    expect(await openFolder(deep)).toEqual({ ok: true, value: deep });
    expect((await stat(deep)).mode & 0o777).toBe(0o700);
  });

  test("that is a file is refused in a sentence", async () => {
    const file = join(folder, "file");
    await writeFile(file, "");
    expect(await openFolder(join(file, "in it"))).toMatchObject({
      fault: "the folder for cases can't be used: a file stands where the folder should be.",
    });
  });
});

describe("the name of a case", () => {
  test("is the day where it is and six letters, and is new each time", () => {
    const lateInVienna = { ms: Date.UTC(2026, 2, 4, 23, 30), offset: 60 };
    expect(newCaseId(lateInVienna)).toMatch(/^20260305-[a-z]{6}$/);
    const ids = new Set(Array.from({ length: 1000 }, () => newCaseId({ ms: START, offset: 0 })));
    expect(ids.size).toBeGreaterThan(995);
  });

  test("is read from its path", () => {
    expect(newCasePath(folder, "20260304-abcdef")).toBe(join(folder, "case-20260304-abcdef.json"));
    expect(idInName(newCasePath(folder, "20260304-abcdef"))).toBe("20260304-abcdef");
    expect(idInName("/x/letter.json")).toBeNull();
  });
});

describe("sweeping", () => {
  const token = "0123456789abcdef";

  async function put(name: string, age = 0): Promise<void> {
    await writeFile(join(folder, name), "");
    const then = (Date.now() - age) / 1000;
    await utimes(join(folder, name), then, then);
  }

  test("takes what a killed writer left, and nothing else", async () => {
    const left = [
      "case-20260304-abcdef.json.saving",
      "case-20260304-abcdef.json.half-typed.saving",
      `case-20260304-abcdef.json.lock.new-${token}`,
    ];
    const others = [
      "case-20260304-abcdef.json",
      "case-20260304-abcdef.json.half-typed",
      "letter.json.saving",
      "case-1.json.saving",
      "case-20260304-abcdef.json.saving.bak",
      "notes.txt",
    ];
    for (const name of [...left, ...others]) await put(name, 3_600_000);
    await mkdir(join(folder, "case-20260304-zzzzzz.json.saving"));
    await openFolder(folder);
    expect(await readdir(folder)).toEqual([...others, "case-20260304-zzzzzz.json.saving"].toSorted());
  });

  test("leaves a case that is held alone", async () => {
    const path = newCasePath(folder, "20260304-abcdef");
    const lock = await lockCase(path);
    await put(`${basename(path)}.saving`, 3_600_000);
    await openFolder(folder);
    expect(await readdir(folder)).toContain(`${basename(path)}.saving`);
    if (lock.ok) await lock.value.release();
    await openFolder(folder);
    expect(await readdir(folder)).toEqual([]);
  });

  test("leaves what is being saved or locked just now", async () => {
    await put(`case-20260304-abcdef.json.lock.after-${token}`);
    await put("case-20260304-abcdef.json.saving");
    await openFolder(folder);
    expect(await readdir(folder)).toHaveLength(2);
  });
});

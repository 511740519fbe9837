// Files that are not sound cases: each gets one sentence, and is left as it was.

import { spawnSync } from "node:child_process";
import { mkdir, readdir, readFile, truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { openCase } from "../../src/store/open-case.ts";
import { aCase } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

const faultOf = async (at: string): Promise<string | null> => {
  const outcome = await openCase(at);
  return outcome.ok ? null : outcome.fault;
};

const save = (file: CaseFile) => lowCase(path, file).write();

describe("a file that is not a sound case is told in one sentence and left as it was", () => {
  const written = JSON.stringify({ ...aCase(), entries: withNotes(aCase(), 2).entries });
  const edited = (from: string, to: string) => written.replace(from, to);

  test.each<[string, string | Buffer, string]>([
    ["empty", "", "the file is empty."],
    ["blank", " \n\n ", "the file is empty."],
    ["no JSON", "heparin 28000", "the file is not JSON, or was cut short."],
    ["JSON of no kind of ours", '{"format":"letter"}', "the file is not a pumpside case (its "],
    ["a list", "[1,2]", "the file is not a pumpside case (its "],
    ["null", "null", "the file is not a pumpside case (its "],
    [
      "newer",
      edited('"version":1', '"version":2'),
      "the case was written by a newer version (file version 2",
    ],
    ["of a version that never was", edited('"version":1', '"version":"x"'), "at version: "],
    ["without entries", edited('"entries":', '"entrees":'), "at entries: "],
    ["with an entry of an unknown kind", edited('"kind":"note"', '"kind":"song"'), "at entries 2 kind: "],
    ["with an entry out of order", edited('"seq":2', '"seq":7'), "entry 2 is out of order"],
    [
      "with a time that is none",
      edited("2026-03-04T08:02", "2026-13-04T08:02"),
      "at entries 2 at: a time in ",
    ],
    ["not text", Buffer.from([0x7b, 0xff, 0xfe, 0x7d]), "the file is not text in UTF-8."],
    [
      "nested without end",
      `{"format":"pumpside-case","version":1,"x":${"[".repeat(200_000)}`,
      "the file is ",
    ],
  ])("%s", async (_, content, sentence) => {
    await writeFile(path, content);
    const fault = await faultOf(path);
    expect(fault?.startsWith(sentence)).toBe(true);
    expect(fault?.endsWith(".")).toBe(true);
    expect(fault).not.toContain(folder);
    expect((await readFile(path)).equals(Buffer.from(content))).toBe(true);
    expect(await readdir(folder)).toHaveLength(1);
  });

  test("not there", async () => {
    expect(await faultOf(path)).toBe("there is no such file.");
    expect(await faultOf(join(path, "deeper"))).toBe("there is no such file.");
  });

  test("a folder", async () => {
    await mkdir(path);
    expect(await faultOf(path)).toBe("it is a folder, not a case file.");
  });

  test("too large", async () => {
    await writeFile(path, "{");
    await truncate(path, 65 * 1024 * 1024);
    expect(await faultOf(path)).toBe("the file is too large for a case (65 MB, the limit is 64 MB).");
  });

  test.skipIf(process.platform === "win32")("a pipe, without waiting for it", async () => {
    spawnSync("mkfifo", [path]);
    expect(await faultOf(path)).toBe("it is not a file.");
  });
});

test.each([
  [50, null],
  [64, "the file is nested too deeply for a case."],
  [1_000_000, "the file is nested too deeply for a case."],
])("a file nested %d deep gives %j", async (depth, said) => {
  const deep = `${"[".repeat(depth)}"[{\\"[["${"]".repeat(depth)}`;
  await writeFile(path, JSON.stringify(withNotes(aCase(), 1)).replace('"label"', `"x":${deep},"label"`));
  expect(await faultOf(path)).toBe(said);
});

test.each(["__proto__", "constructor", "prototype", "\\u005f_proto__"])(
  "a file with a part called %s is refused, wherever it stands",
  async (key) => {
    const written = JSON.stringify(withNotes(aCase(), 1));
    for (const at of ['"label"', '"seq":2', '"heparin"']) {
      await writeFile(path, written.replace(at, `"${key}":{"polluted":true},${at}`));
      expect(await faultOf(path)).toMatch(/^the file has a part called "/);
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  },
);

test("a file with more entries than a case can have is refused", async () => {
  const [opened] = aCase().entries;
  await writeFile(path, JSON.stringify({ ...aCase(), entries: Array(100_001).fill(opened) }));
  expect(await faultOf(path)).toBe("the file has 100001 entries, more than a case can have (100000).");
});

test("a case saved by an editor that marks UTF-8 at the start of a file is read all the same", async () => {
  await save(withNotes(aCase(), 1));
  await writeFile(path, `\ufeff${await readFile(path, "utf8")}`);
  expect(await openCase(path)).toMatchObject({ ok: true, value: { file: { entries: [{}, {}] } } });
});

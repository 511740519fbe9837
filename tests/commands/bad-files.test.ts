// Files that are no sound cases, given to every verb that reads one: one sentence, the code 1, and the file as it was.

import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CASE_FAULT, caseFolder, DONE, expectDone, expectRefused, WRONG_CALL } from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
let sound: string;
beforeAll(async () => {
  cases = await caseFolder();
  const path = expectDone(await cases.pumpside("new", "--label", "sound", "--by", "KM")).trim();
  sound = await readFile(path, "utf8");
});
afterAll(() => cases.remove());

const BAD: [string, () => string, RegExp][] = [
  ["not JSON", () => "heparin 28000 at ten", /the file is not JSON, or was cut short/],
  ["empty", () => "", /the file is empty/],
  ["JSON of another kind", () => '{"format":"letter"}', /not a pumpside case \(its "format" is not/],
  [
    "newer",
    () => sound.replace('"version": 1', '"version": 9'),
    /newer version \(file version 9, .* up to 1\)/,
  ],
  [
    "with a kind that is none",
    () => sound.replace('"kind":"opened"', '"kind":"song"'),
    /at entries 1 kind: /,
  ],
];

describe.each(BAD)("a file that is %s", (what, content, says) => {
  let path: string;
  beforeAll(async () => {
    path = join(cases.dir, `${what.replaceAll(" ", "-")}.json`);
    await writeFile(path, content());
  });

  test.each([
    ["check", []],
    ["figures", ["--json"]],
    ["review", []],
    ["report", ["--as", "text"]],
    ["log", ["b"]],
  ] as [string, string[]][])("%s refuses it and leaves it alone", async (verb, more) => {
    expectRefused(await cases.pumpside(verb, path, ...more), CASE_FAULT, says);
    expect(await readFile(path, "utf8")).toBe(content());
    expect((await readdir(cases.dir)).filter((name) => name.endsWith(".lock"))).toEqual([]);
  });
});

describe("a case file that was cut short", () => {
  test("is told as damaged, read as far as it goes, and not called whole", async () => {
    const path = expectDone(await cases.pumpside("new", "--label", "cut")).trim();
    for (const stroke of ["h28000", "a512"]) expectDone(await cases.pumpside("log", "cut", stroke));
    const whole = await readFile(path, "utf8");
    const cut = whole.slice(0, whole.indexOf('"kind":"act"'));
    await writeFile(path, cut);
    await writeFile(`${path}.before`, cut);
    const checked = await cases.pumpside("check", path);
    expectRefused(checked, CASE_FAULT, /damaged: it was recovered up to entry 2/);
    const figures = await cases.pumpside("figures", path, "--json");
    expect(JSON.parse(figures.out).figures.heparinTotal.value).toBe(28_000);
    expect(figures.err).toMatch(/^pumpside: [^\n]*recovered up to entry 2[^\n]*\n$/);
    expect(await readFile(path, "utf8")).toBe(cut);
  });
});

describe("a path", () => {
  test.each([
    ["of a folder", () => cases.dir, "check", CASE_FAULT, /it is a folder, not a case file/],
    ["of nothing", () => join(cases.dir, "none.json"), "check", CASE_FAULT, /there is no such file/],
    [
      "of nothing in no folder",
      () => join(cases.dir, "no", "none.json"),
      "figures",
      CASE_FAULT,
      /no such file/,
    ],
    ["of a folder without cases", () => join(cases.dir, "bare"), "review", WRONG_CALL, /holds no case/],
  ] as const)("%s is refused", async (_what, path, verb, code, says) => {
    await mkdir(join(cases.dir, "bare"), { recursive: true });
    expectRefused(await cases.pumpside(verb, path()), code, says);
  });

  test("of a file where the folder for cases should be is refused", async () => {
    const path = join(cases.dir, "file");
    await writeFile(path, "");
    const refused = await cases.pumpside("new", "--dir", join(path, "below"));
    expectRefused(
      refused,
      CASE_FAULT,
      /folder for cases can't be used: a file stands where the folder should be/,
    );
  });

  test.skipIf(process.platform !== "linux")(
    "of a folder that can never be made ends in a sentence",
    async () => {
      const refused = await cases.pumpside("new", "--dir", "/proc/pumpside/cases");
      expectRefused(refused, CASE_FAULT, /folder for cases can't be used/);
    },
  );

  test("of a folder that is not there yet: it is made, for its owner only", async () => {
    const path = expectDone(await cases.pumpside("new", "--dir", join(cases.dir, "a", "b")));
    expect(path).toContain(join("a", "b", "case-"));
    const { code, out } = await cases.pumpside("list", "--dir", join(cases.dir, "a", "c"));
    expect({ code, out }).toEqual({ code: DONE, out: "No case here yet: pumpside new makes one.\n" });
  });
});

// An encrypted folder without a terminal: the passphrase from a file, every verb on it, and what is said without one.

import { mkdir, readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { filesIn, filesWith, PASSPHRASE } from "../store/safes.ts";
import { CASE_FAULT, caseFolder, expectDone, expectRefused, WRONG_CALL } from "./pumpside.ts";

let cases: Awaited<ReturnType<typeof caseFolder>>;
let elsewhere: Awaited<ReturnType<typeof caseFolder>>;
let words: string;
beforeAll(async () => {
  cases = await caseFolder();
  elsewhere = await caseFolder();
  words = join(elsewhere.dir, "words");
  await writeFile(words, `\uFEFF${PASSPHRASE}\r\nwhat follows is not looked at`);
  expectDone(await cases.pumpside("new", "--label", "hush valve", "--by", "KM"));
  expectDone(await cases.pumpside("log", "hush valve", "h 28000 ; before"));
});
afterAll(async () => {
  await cases.remove();
  await elsewhere.remove();
});

const withWords = (...call: string[]) => cases.pumpside(...call, "--passphrase-file", words);
const SECRETS = ["hush", "28000", "heparin", "before", "after", "second"];

describe("encrypt", () => {
  test("without a terminal or a file for the passphrase is refused, and nothing is changed", async () => {
    const before = await filesIn(cases.dir);
    const { code, out, err } = await cases.pumpside("encrypt");
    expect(code).toBe(WRONG_CALL);
    expect(out).toMatch(/Without the passphrase nobody can read the cases again/);
    expect(err).toMatch(/^pumpside: a passphrase is needed, and there is no terminal to ask for it: .*\.\n$/);
    expect(await filesIn(cases.dir)).toEqual(before);
  });

  test("takes no passphrase that is too short", async () => {
    const short = join(elsewhere.dir, "short");
    await writeFile(short, "abc");
    const { code, err } = await cases.pumpside("encrypt", "--passphrase-file", short);
    expect(code).toBe(WRONG_CALL);
    expect(err).toMatch(/^pumpside: that is too short: take at least 16 characters[^\n]*\.\n$/);
    expect(await filesWith(cases.dir, "hush")).toHaveLength(2);
  });

  test("says what it means, and leaves nothing that can be read", async () => {
    const out = expectDone(await withWords("encrypt"));
    const said = out.replaceAll(/\s+/g, " ");
    expect(said).toMatch(/nobody can read the cases again, and that includes those who made this program/);
    expect(said).toMatch(/no way back in once it is lost/);
    expect(said).toMatch(/Not covered: second copies and backups .* reports and exports/);
    expect(out.split("\n").filter((line) => line.length > 80 && !line.includes(cases.dir))).toEqual([]);
    expect(said).toMatch(
      /Files rewritten: 2\. Every case of this folder is encrypted, and so is every new one\./,
    );
    expect(await filesWith(cases.dir, ...SECRETS, PASSPHRASE)).toEqual([]);
    expect((await stat(join(cases.dir, "pumpside.passphrase"))).mode & 0o777).toBe(0o600);
  });
});

describe("in the encrypted folder", () => {
  test.each([
    ["list"],
    ["new"],
    ["log", "hush valve", "b"],
    ["figures", "hush valve"],
    ["check", "hush valve"],
    ["review", "hush valve"],
    ["report", "hush valve", "--as", "text"],
    ["audit"],
    ["export"],
    ["decrypt"],
    ["encrypt"],
  ])("%s without the passphrase is refused in one sentence", async (...call) => {
    const before = await filesIn(cases.dir);
    expectRefused(
      await cases.pumpside(...call),
      WRONG_CALL,
      /--passphrase-file or in PUMPSIDE_PASSPHRASE_FILE/,
    );
    expect(await filesIn(cases.dir)).toEqual(before);
  });

  test("another passphrase is told at once, whatever is asked", async () => {
    const wrong = join(elsewhere.dir, "wrong");
    await writeFile(wrong, `${PASSPHRASE} `);
    for (const call of [["list"], ["log", "hush valve", "b"], ["decrypt"]])
      expectRefused(
        await cases.pumpside(...call, "--passphrase-file", wrong),
        WRONG_CALL,
        "that is not the passphrase of this folder.",
      );
  });

  test("a file for the passphrase that is not there is told, and never its name", async () => {
    const refused = await cases.pumpside("list", "--passphrase-file", join(elsewhere.dir, "hush"));
    expectRefused(
      refused,
      WRONG_CALL,
      "the file that holds the passphrase can't be read: there is no such file.",
    );
  });

  test("every verb works with it, and nothing of a case can be read in the folder", async () => {
    const path = expectDone(await withWords("new", "--label", "hush second", "--by", "KM")).trim();
    expectDone(await withWords("log", "hush second", "n hush after"));
    expectDone(await withWords("log", path, "b"));
    expect(expectDone(await withWords("list"))).toMatch(/hush second[\s\S]*hush valve/);
    expect(expectDone(await withWords("check", "hush second"))).toMatch(/valid and whole: 3 entries/);
    expect(expectDone(await withWords("review", "hush valve"))).toMatch(/heparin/);
    expect(expectDone(await withWords("review", cases.dir))).toMatch(/== hush valve/);
    expect(expectDone(await withWords("figures", "hush valve"))).toMatch(/28 000 IU/);
    expect(expectDone(await withWords("audit"))).toMatch(/still open +2\n/);
    expect(expectDone(await withWords("export", "--what", "entries"))).toMatch(/"kind":"drug"/);
    expect(expectDone(await withWords("report", "hush valve", "--as", "text"))).toMatch(/28 000 IU/);
    expect(await filesWith(cases.dir, ...SECRETS)).toEqual([]);
  });

  test("the environment names the file as well", async () => {
    process.env.PUMPSIDE_PASSPHRASE_FILE = words;
    try {
      expect(expectDone(await cases.pumpside("list"))).toMatch(/hush valve/);
    } finally {
      delete process.env.PUMPSIDE_PASSPHRASE_FILE;
    }
  });

  test("a report never takes the place of an encrypted case, not even by force", async () => {
    const [name = ""] = (await readdir(cases.dir)).filter((one) => one.endsWith(".json"));
    const copy = join(elsewhere.dir, "kept.json");
    await writeFile(copy, await readFile(join(cases.dir, name)));
    const refused = await withWords("report", "hush valve", "--as", "text", "--out", copy, "--force");
    expectRefused(refused, CASE_FAULT, /is a case: name another file with --out\.$/m);
    await rm(copy);
  });

  test("a second copy is encrypted too, and the folder of copies opens with the same passphrase", async () => {
    const copies = join(elsewhere.dir, "copies");
    await mkdir(copies);
    expectDone(await withWords("log", "hush valve", "n hush after", "--copy-to", copies));
    expect(await filesWith(copies, ...SECRETS)).toEqual([]);
    expect(expectDone(await withWords("list", "--dir", copies))).toMatch(/hush valve/);
    expect(expectDone(await cases.pumpside("list", "--dir", copies))).toMatch(
      /cannot be read: it is encrypted, and no passphrase was given for it/,
    );
    const [name = ""] = await readdir(copies);
    expect(expectDone(await withWords("check", join(copies, basename(name))))).toMatch(/valid and whole/);
  });

  test("a marker that is damaged, with no case to try a passphrase on, says so", async () => {
    const empty = join(elsewhere.dir, "empty");
    await mkdir(empty);
    await writeFile(join(empty, "pumpside.passphrase"), "words");
    expectRefused(
      await withWords("list", "--dir", empty),
      WRONG_CALL,
      /the file pumpside\.passphrase of this folder can't be used .*: put it back from a copy of the folder\.$/m,
    );
  });
});

describe("decrypt", () => {
  test("gives the cases back, and then no passphrase is asked for any more", async () => {
    expect(expectDone(await withWords("decrypt"))).toMatch(
      /No case of this folder is encrypted any more\.\n$/,
    );
    expect(await filesWith(cases.dir, "hush")).toHaveLength(4);
    expect(await readdir(cases.dir)).not.toContain("pumpside.passphrase");
    expect(expectDone(await cases.pumpside("check", "hush valve"))).toMatch(/valid and whole: 3 entries/);
  });

  test("of a folder that is not encrypted says that it is not", async () => {
    expect(expectDone(await cases.pumpside("decrypt"))).toBe("This folder is not encrypted.\n");
  });
});

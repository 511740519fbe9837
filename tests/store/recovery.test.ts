// Recovery: a damaged or missing case is opened from what is whole, and nothing is overwritten.

import { readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { lastGoodOf } from "../../src/store/last-good.ts";
import { holdCase, openCase } from "../../src/store/open-case.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { aCase, withEntry } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

/** Saves the case with two entries, four, and so on: the last good copy has two entries fewer than the file. */
async function saved(entries = 10): Promise<void> {
  const low = lowCase(path, withNotes(aCase(), 1));
  await low.write();
  while (low.data.entries.length < entries) {
    low.data = withNotes(low.data, 2);
    await low.write();
  }
}

async function opened(copies?: string[]): Promise<{ file: CaseFile; recovered: string | null }> {
  const outcome = await openCase(path, copies);
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value;
}

async function held(): Promise<{ file: CaseFile; recovered: string | null }> {
  const outcome = await holdCase(path);
  if (!outcome.ok) throw new Error(outcome.fault);
  await outcome.value.release();
  return outcome.value;
}

const cutTo = async (part: number) => {
  const whole = await readFile(path);
  await writeFile(path, whole.subarray(0, Math.floor(whole.length * part)));
};

const editText = async (edit: (text: string) => string) =>
  writeFile(path, edit(await readFile(path, "utf8")));

describe("the last good copy", () => {
  test("is the state before the last save, for its owner only", async () => {
    await saved();
    const before = await readCaseFile(lastGoodOf(path));
    expect(before.ok && before.value.file.entries).toHaveLength(8);
    expect(before.ok && chainFault(before.value.file)).toBeNull();
    expect((await stat(lastGoodOf(path))).mode & 0o777).toBe(0o600);
    expect(await readdir(folder)).toHaveLength(2);
  });
});

describe("a damaged case that is only looked at", () => {
  test("is shown as far as it is whole, says so, and is left as it was", async () => {
    await saved();
    await cutTo(0.99);
    const damaged = await readFile(path);
    const { file, recovered } = await opened();
    expect(recovered).toBe(
      `The file of this case is damaged: it was recovered up to entry ${file.entries.length} (08:0${file.entries.length}:00). Look at what follows it.`,
    );
    expect(await readFile(path)).toEqual(damaged);
    expect(await readdir(folder)).toHaveLength(2);
  });

  test("cut short anywhere is recovered to its last good copy at least, and its chain holds", async () => {
    await saved();
    const whole = await readFile(path);
    for (let length = 0; length < whole.length - 2; length += 97) {
      await writeFile(path, whole.subarray(0, length));
      const { file, recovered } = await opened();
      expect(file.entries.length).toBeGreaterThanOrEqual(8);
      expect(chainFault(file)).toBeNull();
      expect(recovered).toContain(`up to entry ${file.entries.length} `);
    }
  });

  test("cut short anywhere, with no other copy, is recovered to the cut or refused in a sentence", async () => {
    await saved();
    await rm(lastGoodOf(path));
    const whole = await readFile(path, "utf8");
    const counts = new Set<number>();
    for (let length = 0; length < whole.length - 2; length += 53) {
      await writeFile(path, whole.slice(0, length));
      const outcome = await openCase(path);
      const lines = whole.slice(0, length + 1).match(/\n {4}\{.*\}(?=[,\n])/g)?.length ?? 0;
      counts.add(lines);
      if (lines === 0) expect(outcome).toMatchObject({ fault: expect.stringMatching(/\.$/) });
      else if (outcome.ok) expect(outcome.value.file.entries.length).toBeGreaterThanOrEqual(lines);
      else expect.unreachable(outcome.fault);
    }
    expect(counts.size).toBeGreaterThan(4);
  });

  test("with a piece in its middle gone is put together from both, none lost", async () => {
    await saved();
    await editText((text) => text.replace('"kind":"note","text":"note 5"', '"ki\u0000\u0000'));
    expect((await opened()).file.entries).toHaveLength(10);
  });

  test("and whose last good copy is damaged too is put together from both", async () => {
    await saved(12);
    await editText((text) => text.replace('"text":"note 5"', "?"));
    const before = await readFile(lastGoodOf(path), "utf8");
    await writeFile(lastGoodOf(path), before.replace('"text":"note 8"', "?"));
    const { file } = await opened();
    expect(file.entries).toHaveLength(12);
    expect(chainFault(file)).toBeNull();
  });

  test("that is gone, with its last good copy and another, is taken from the longer", async () => {
    await saved();
    const copy = join(folder, "copy");
    await writeFile(copy, await readFile(path));
    await rm(path);
    expect((await opened()).file.entries).toHaveLength(8);
    const { file, recovered } = await opened([copy]);
    expect(file.entries).toHaveLength(10);
    expect(recovered).toMatch(/^The file of this case is missing or empty: it was recovered up to entry 10/);
  });

  test.each([
    ["a letter", '{"format":"letter"}'],
    ["a case of a newer version", '{"format":"pumpside-case","version":2,"entries":[]}'],
    ["a list", "[1]"],
  ])("is not mistaken for %s, of which nothing is recovered", async (_, text) => {
    await saved();
    await writeFile(path, text);
    expect(await openCase(path)).toMatchObject({ ok: false });
    expect(await holdCase(path)).toMatchObject({ ok: false });
    expect(await readFile(path, "utf8")).toBe(text);
  });

  test("is not mended by losing what a newer program may have written", async () => {
    await lowCase(path, withNotes(aCase(), 3)).write();
    await editText((text) => text.replaceAll('"kind":"note"', '"kind":"song"'));
    expect(await openCase(path)).toMatchObject({
      ok: false,
      fault: expect.stringMatching(/^at entries 2 kind: /),
    });
  });
});

describe("a damaged case that is opened to be written", () => {
  test("is repaired, keeps the damaged file under a name that says so, and says it in the record", async () => {
    await saved();
    await cutTo(0.99);
    const damaged = await readFile(path);
    const before = await readFile(lastGoodOf(path));
    const { file, recovered } = await held();
    const aside = `${basename(path)}.damaged-1`;
    expect(recovered).toContain(`What was left of the file is kept beside it as ${aside}.`);
    expect(file.entries.at(-1)).toMatchObject({ kind: "note", by: "AB", text: recovered });
    expect(await readFile(join(folder, aside))).toEqual(damaged);
    expect(await readFile(lastGoodOf(path))).toEqual(before);
    const back = await opened();
    expect(back.recovered).toBeNull();
    expect(back.file.entries).toHaveLength(file.entries.length);
    expect(chainFault(back.file)).toBeNull();
  });

  test("a second time keeps both damaged files", async () => {
    await saved();
    await cutTo(0.99);
    await held();
    await cutTo(0.98);
    await held();
    const asides = (await readdir(folder)).filter((name) => name.includes("damaged"));
    expect(asides).toEqual([`${basename(path)}.damaged-1`, `${basename(path)}.damaged-2`]);
  });

  test("and was gone is written again", async () => {
    await saved();
    await rm(path);
    const { file } = await held();
    expect(file.entries).toHaveLength(9);
    expect((await opened()).file.entries).toHaveLength(9);
    expect(await readdir(folder)).toHaveLength(2);
  });

  test("gets no note once it is closed, and stays closed", async () => {
    await saved();
    const low = lowCase(path, withEntry((await opened()).file, { kind: "closed", operator: "AB" }));
    await low.write();
    await low.write();
    await editText((text) => text.replace('"text":"note 5"', "?"));
    const { file } = await held();
    expect(file.entries.at(-1)?.kind).toBe("closed");
    expect(chainFault((await opened()).file)).toBeNull();
  });
});

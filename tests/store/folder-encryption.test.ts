// A folder that is encrypted and decrypted again: every file as it was, whenever it was stopped, and nothing forgotten.

import { readdir, readFile, rm, symlink, utimes, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { SUMMARISER } from "../../src/reports/case-summary.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { indexOf } from "../../src/store/case-index.ts";
import { listCases } from "../../src/store/case-list.ts";
import { newCasePath, openFolder } from "../../src/store/folder.ts";
import { decryptFolder, encryptFolder } from "../../src/store/folder-encryption.ts";
import { keepBeside, readBeside } from "../../src/store/half-typed.ts";
import { isMarked } from "../../src/store/keyhole.ts";
import { lockCase, lockOf } from "../../src/store/lock.ts";
import { openCase } from "../../src/store/open-case.ts";
import { isEncrypted, type Safe } from "../../src/store/safe.ts";
import { writeMany } from "../helpers/many-cases.ts";
import { aCase } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { aSafe, filesIn, filesWith, othersSafe, put } from "./safes.ts";
import { testFolder } from "./test-folder.ts";

const IDS = ["20260301-aaaaaa", "20260302-bbbbbb", "20260303-cccccc", "20260304-dddddd"];
const SECRETS = ["hush", "note 2", "heparin", "half a word", "valve"];

let folder: string;
beforeEach(async () => {
  ({ folder } = await testFolder());
});

const pathOf = (place: number) => newCasePath(folder, IDS[place] as string);

/** Four cases, with everything that can lie beside one, and files of other programs. */
async function filled(): Promise<void> {
  for (const [place, id] of IDS.entries()) {
    const low = lowCase(pathOf(place), withNotes(aCase(id, `hush ${place}`), 1));
    await low.write();
    low.data = withNotes(low.data, place);
    await low.write();
  }
  const [first, second] = [pathOf(0), pathOf(1)];
  await writeFile(`${first}.damaged-1`, '{"format":"pumpside-case","label":"hush');
  await writeFile(`${first}.replaced-1`, "hush, from another program");
  await writeFile(`${first}.replaced-12`, Buffer.from([0, 255, 0]));
  const keeper = keepBeside(second, undefined);
  keeper.keep([{ text: "n half a word" }]);
  await keeper.close();
  await writeFile(pathOf(2), (await readFile(pathOf(2))).subarray(0, 900));
  await rm(pathOf(3));
  await lowCase(
    join(folder, "renamed.json"),
    aCase("20260305-eeeeee", "hush, under a name of its own"),
  ).write();
  await writeFile(join(folder, "settings.json"), '{"program":"another"}');
  await writeFile(join(folder, "letter.txt"), "a letter");
}

const encrypted = (safe: Safe = aSafe) => encryptFolder(folder, safe);

/** Names of all files, by whether they are encrypted. */
async function byState() {
  const files = Object.entries(await filesIn(folder));
  const names = (state: boolean) =>
    files.filter(([, bytes]) => isEncrypted(bytes) === state).map(([name]) => name);
  return { encrypted: names(true), plain: names(false) };
}

describe("a folder of cases", () => {
  test("is encrypted whole, and decrypted byte for byte as it was", async () => {
    await filled();
    const before = await filesIn(folder);
    const done = await encrypted();
    expect(done).toEqual({ ok: true, value: { files: 12, left: [], isDone: true } });
    const { plain } = await byState();
    expect(plain).toEqual(["letter.txt", "settings.json"]);
    expect(await filesWith(folder, ...SECRETS)).toEqual([]);
    expect(await decryptFolder(folder, aSafe)).toEqual(done);
    expect(await filesIn(folder)).toEqual(before);
  });

  test("that is encrypted a second time has nothing more to be done", async () => {
    await filled();
    await encrypted();
    const before = await filesIn(folder);
    expect(await encrypted()).toEqual({ ok: true, value: { files: 0, left: [], isDone: true } });
    expect(await filesIn(folder)).toEqual(before);
  });

  test("is listed the same before, while it is and after, and each case is opened the same", async () => {
    await filled();
    const listed = (safe?: Safe) => listCases(folder, { summariser: SUMMARISER, safe });
    const cases = await listed();
    const labels = cases.map((one) => ("label" in one ? one.label : one.fault));
    expect(labels.filter((label) => label.startsWith("hush"))).toHaveLength(5);
    await encrypted();
    expect(await listed(aSafe)).toEqual(cases);
    await decryptFolder(folder, aSafe);
    expect(await listed()).toEqual(cases);
  });

  test("keeps what was half typed", async () => {
    await filled();
    await encrypted();
    expect(await readBeside(pathOf(1), aSafe)).toEqual([{ text: "n half a word" }]);
  });

  test("loses its index and what a killed writer left, which hold the same words", async () => {
    await writeMany(folder, 50);
    await listCases(folder, { summariser: SUMMARISER });
    const [name] = (await readdir(folder)).filter((one) => one.startsWith("case-"));
    for (const beside of ["", ".before", ".half-typed"])
      await writeFile(join(folder, `${name}${beside}.saving`), "hush");
    await writeFile(`${indexOf(folder)}.saving`, "hush");
    expect((await encrypted()).ok).toBe(true);
    expect(await filesWith(folder, "hush", "invented")).toEqual([]);
    expect((await readdir(folder)).filter((one) => /saving|index/.test(one))).toEqual([]);
  });

  test("with nothing in it is encrypted for the cases to come", async () => {
    expect(await encrypted()).toMatchObject({ ok: true, value: { files: 0 } });
    expect(await isMarked(folder)).toBe(true);
  });
});

describe("a case that somebody holds", () => {
  test("keeps the folder from being changed at all, either way", async () => {
    await filled();
    const lock = await lockCase(pathOf(1));
    if (!lock.ok) throw new Error(lock.fault);
    const before = await filesIn(folder);
    const fault = `nothing was changed, because ${basename(pathOf(1))} is open in a console: leave it there first.`;
    expect(await encrypted()).toEqual({ ok: false, fault });
    expect(await decryptFolder(folder, aSafe)).toEqual({ ok: false, fault });
    expect(await filesIn(folder)).toEqual(before);
    await lock.value.release();
    expect(await encrypted()).toMatchObject({ ok: true });
  });

  test("while the others are being encrypted stays as it is, and the next time it is done", async () => {
    await filled();
    const taken: Promise<unknown>[] = [];
    const onProgress = (done: number) => {
      if (done === 1) taken.push(lockCase(pathOf(2)));
    };
    const done = await encryptFolder(folder, aSafe, { onProgress });
    expect(done).toMatchObject({ ok: true, value: { isDone: false, left: [{ name: basename(pathOf(2)) }] } });
    await Promise.all(taken);
    await rm(lockOf(pathOf(2)));
    expect(await encrypted()).toMatchObject({ ok: true, value: { isDone: true, left: [] } });
    expect(await filesWith(folder, ...SECRETS)).toEqual([]);
  });
});

describe("stopped after any case", () => {
  /** Stops after so many cases. */
  const stopAfter = (cases: number) => {
    const stopping = new AbortController();
    return { onProgress: (done: number) => done === cases && stopping.abort(), signal: stopping.signal };
  };
  const opens = async (safe: Safe) => {
    const paths = [pathOf(0), pathOf(1), pathOf(2), pathOf(3), join(folder, "renamed.json")];
    const opened = await Promise.all(paths.map((path) => openCase(path, [], safe)));
    return opened.map((one) => (one.ok ? one.value.file.entries.length : one.fault));
  };

  test.each([1, 2, 3, 4])("%d of them, every case opens, and going on ends it", async (cases) => {
    await filled();
    const [before, counts] = [await filesIn(folder), await opens(aSafe)];
    expect(counts.filter((count) => typeof count === "number")).toHaveLength(5);

    const half = await encryptFolder(folder, aSafe, stopAfter(cases));
    expect(half).toMatchObject({ ok: true, value: { isDone: false } });
    expect(await opens(aSafe)).toEqual(counts);
    expect((await byState()).plain.length).toBeGreaterThan(2);
    expect(await encrypted()).toMatchObject({ ok: true, value: { isDone: true } });
    expect(await filesWith(folder, ...SECRETS)).toEqual([]);

    const halfBack = await decryptFolder(folder, aSafe, stopAfter(cases));
    expect(halfBack).toMatchObject({ ok: true, value: { isDone: false } });
    expect(await isMarked(folder)).toBe(true);
    expect(await opens(aSafe)).toEqual(counts);
    expect(await decryptFolder(folder, aSafe)).toMatchObject({ ok: true, value: { isDone: true } });
    expect(await filesIn(folder)).toEqual(before);
  });
});

describe("what can't be rewritten", () => {
  test("stays and is named: of another passphrase, damaged, a link to another place", async () => {
    await filled();
    await encrypted();
    await writeFile(pathOf(0), put(othersSafe, "theirs"));
    const damaged = (await readFile(pathOf(1))).subarray(0, -3);
    await writeFile(pathOf(1), damaged);
    await rm(pathOf(2));
    await symlink(join(folder, "letter.txt"), pathOf(2));
    const done = await decryptFolder(folder, aSafe);
    expect(done.ok && done.value).toMatchObject({
      isDone: true,
      left: [
        { name: basename(pathOf(0)), why: expect.stringMatching(/another passphrase/) },
        { name: basename(pathOf(1)), why: expect.stringMatching(/damaged or changed/) },
        { name: basename(pathOf(2)), why: "it is a link to another place" },
      ],
    });
    expect(await readFile(pathOf(1))).toEqual(damaged);
    expect((await byState()).encrypted).toEqual([basename(pathOf(0)), basename(pathOf(1))]);
  });

  test("in a folder that is gone is told in words", async () => {
    expect(await encryptFolder(join(folder, "gone"), aSafe)).toMatchObject({
      ok: false,
      fault: expect.stringMatching(/^it was not finished: the folder is gone\. Every case can still be read/),
    });
  });
});

test("what a killed rewriting left is swept when the folder is opened later", async () => {
  await filled();
  for (const beside of [".before", ".half-typed", ".damaged-1", ""]) {
    await writeFile(`${pathOf(0)}${beside}.saving`, "half");
    await utimes(`${pathOf(0)}${beside}.saving`, 1, 1);
  }
  await openFolder(folder);
  expect((await readdir(folder)).filter((name) => name.endsWith(".saving"))).toEqual([]);
});

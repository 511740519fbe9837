// A case in an encrypted folder that is damaged, or that another program has been at.

import { readdir, readFile, rm, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { holdCase, openCase } from "../../src/store/open-case.ts";
import { plain } from "../../src/store/safe.ts";
import { reopened } from "./reopened.ts";
import { aSafe, entriesInSafe, filesIn, filesWith, othersSafe, put, savedInSafe } from "./safes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

describe("another program's doing", () => {
  async function watched() {
    await savedInSafe(path, 4);
    return reopened(path, aSafe);
  }
  const asides = async () => (await readdir(folder)).filter((name) => name.includes("replaced"));

  test("that only touched the time of the file is none", async () => {
    const { save, told } = await watched();
    await utimes(path, 1, 1);
    await save();
    expect([told, await asides()]).toEqual([[], []]);
  });

  test.each([
    ["something plain", Buffer.from("something")],
    ["an envelope of another passphrase", put(othersSafe, "something")],
    ["another state of the case", put(aSafe, "something")],
  ])("that put %s in its place is kept and told", async (_, bytes) => {
    const { save, told } = await watched();
    await writeFile(path, bytes);
    await save();
    expect(told).toHaveLength(1);
    expect(await readFile(`${path}.replaced-1`)).toEqual(bytes);
    expect(await entriesInSafe(path)).toBe(5);
  });
});

describe("a damaged case in a safe", () => {
  const TOLD =
    /^The file of this case is damaged and, being encrypted, can't be read even in part, so that a copy had to serve: it was recovered up to entry 8 \(08:08:00\)\. Look at what follows it\./;

  const cut = async (by = 100) => {
    const whole = await readFile(path);
    await writeFile(path, whole.subarray(0, whole.length - by));
  };

  test("is opened from its last good copy, and says that it can't be read in part", async () => {
    await savedInSafe(path);
    await cut();
    const before = await filesIn(folder);
    const opened = await openCase(path, [], aSafe);
    expect(opened.ok && opened.value.recovered).toMatch(TOLD);
    expect(opened.ok && opened.value.file.entries).toHaveLength(8);
    expect(await filesIn(folder)).toEqual(before);
  });

  test("is opened from the second copy where that is longer", async () => {
    await savedInSafe(path);
    const copy = join(folder, "copy");
    await writeFile(copy, await readFile(path));
    await cut();
    const opened = await openCase(path, [copy], aSafe);
    expect(opened.ok && opened.value.file.entries).toHaveLength(10);
  });

  test("is repaired into the safe, and what was there is kept as it was", async () => {
    await savedInSafe(path);
    await cut();
    const damaged = await readFile(path);
    const held = await holdCase(path, { safe: aSafe });
    if (!held.ok) throw new Error(held.fault);
    await held.value.release();
    expect(held.value.recovered).toMatch(TOLD);
    expect(await entriesInSafe(path)).toBe(9);
    expect(await readFile(`${path}.damaged-1`)).toEqual(damaged);
    expect(await filesWith(folder, "note")).toEqual([]);
  });

  test("that was there without any copy is refused in words, and left", async () => {
    await savedInSafe(path, 2);
    await cut();
    const damaged = await readFile(path);
    expect(await holdCase(path, { safe: aSafe })).toMatchObject({
      ok: false,
      fault: expect.stringMatching(/^it is encrypted and was damaged or changed, .* read in part\.$/),
    });
    expect(await readFile(path)).toEqual(damaged);
  });

  test("that is gone is written again from its last good copy", async () => {
    await savedInSafe(path);
    await rm(path);
    const opened = await openCase(path, [], aSafe);
    expect(opened.ok && opened.value.recovered).toMatch(/^The file of this case is missing or empty/);
    expect(await openCase(path, [], plain)).toMatchObject({ ok: false, fault: "there is no such file." });
  });
});

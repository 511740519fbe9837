// The keyhole of an encrypted folder: what a passphrase is tried in before anything is opened with it.

import { cp, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { lowCase } from "../../src/store/case-adapter.ts";
import { safeFitting } from "../../src/store/encrypting-safe.ts";
import { newCasePath } from "../../src/store/folder.ts";
import { encryptFolder } from "../../src/store/folder-encryption.ts";
import { keyholeAt, markerOf } from "../../src/store/keyhole.ts";
import { aCase } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { aSafe, filesIn, othersSafe, PASSPHRASE } from "./safes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let [first, second, gone] = ["", "", ""];
beforeEach(async () => {
  ({ folder } = await testFolder());
  const ids = ["20260301-aaaaaa", "20260302-bbbbbb", "20260304-dddddd"];
  [first, second, gone] = ids.map((id) => newCasePath(folder, id)) as [string, string, string];
});

/** Cases that were saved twice; the last one has only its last good copy. */
async function filled(): Promise<void> {
  for (const path of [first, second, gone]) {
    const low = lowCase(path, aCase());
    await low.write();
    low.data = withNotes(low.data, 1);
    await low.write();
  }
  await rm(gone);
}

describe("the keyhole", () => {
  const opens = async (at: string): Promise<boolean> => {
    const keyhole = await keyholeAt(at);
    if (keyhole.is !== "found") throw new Error(keyhole.is);
    return (await safeFitting(PASSPHRASE, keyhole.envelope)) !== null;
  };

  test("is the marker of the folder, for it and for each case in it", async () => {
    await filled();
    expect(await keyholeAt(folder)).toEqual({ is: "none" });
    expect(await keyholeAt(join(folder, "not there"))).toEqual({ is: "none" });
    await encryptFolder(folder, aSafe);
    for (const at of [folder, first, gone]) {
      expect(await keyholeAt(at)).toMatchObject({ is: "found", isMarked: true });
      expect(await opens(at)).toBe(true);
    }
  });

  test("of a folder that lost its marker is its newest case, and of a case alone the case", async () => {
    await filled();
    await encryptFolder(folder, aSafe);
    const alone = join(folder, "alone");
    await cp(second, join(alone, "case.json"));
    await rm(markerOf(folder));
    for (const at of [folder, join(alone, "case.json")]) {
      expect(await keyholeAt(at)).toMatchObject({ is: "found", isMarked: false });
      expect(await opens(at)).toBe(true);
    }
    expect(await keyholeAt(alone)).toEqual({ is: "none" });
  });

  test.each([
    ["cut short", (whole: Buffer) => whole.subarray(0, 60)],
    ["empty", () => Buffer.of()],
    ["something else", () => Buffer.from("words")],
  ])("of a folder whose marker is %s is its newest case, and encrypting again mends it", async (_, harm) => {
    await filled();
    await encryptFolder(folder, aSafe);
    const whole = await readFile(markerOf(folder));
    await writeFile(markerOf(folder), harm(whole));
    expect(await keyholeAt(folder)).toMatchObject({ is: "found", isMarked: true });
    expect(await opens(folder)).toBe(true);
    await encryptFolder(folder, aSafe);
    const mended = await readFile(markerOf(folder));
    expect(mended).toHaveLength(whole.length);
    expect(Buffer.from(await aSafe.take(mended))).toHaveLength(0);
  });

  test("that is damaged, with no case beside it, is told", async () => {
    await writeFile(markerOf(folder), "words");
    expect(await keyholeAt(folder)).toEqual({ is: "damaged", fault: "it is not as it was written" });
  });

  test("of a passphrase chosen by somebody else meanwhile is left, with every case", async () => {
    await filled();
    await encryptFolder(folder, othersSafe);
    const before = await filesIn(folder);
    expect(await encryptFolder(folder, aSafe)).toMatchObject({
      ok: false,
      fault: expect.stringMatching(/another passphrase has been chosen for this folder meanwhile/),
    });
    expect(await filesIn(folder)).toEqual(before);
  });
});

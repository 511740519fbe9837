// Cases in an encrypted folder: kept, copied, listed, watched and recovered as others are, and nothing of them readable.

import { readdir, readFile, rm, stat, utimes, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import fc from "fast-check";
import { beforeEach, describe, expect, onTestFinished, test } from "vitest";
import { SUMMARISER } from "../../src/reports/case-summary.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { caseBytes } from "../../src/store/case-bytes.ts";
import { indexOf } from "../../src/store/case-index.ts";
import { listCases } from "../../src/store/case-list.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { newCasePath } from "../../src/store/folder.ts";
import { keepBeside, readBeside } from "../../src/store/half-typed.ts";
import { markerOf } from "../../src/store/keyhole.ts";
import { lastGoodOf } from "../../src/store/last-good.ts";
import { appendTo, createCase, holdCase, openCase } from "../../src/store/open-case.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { plain } from "../../src/store/safe.ts";
import { copyOf, copyOnce } from "../../src/store/second-copy.ts";
import { anyText } from "../helpers/any-text.ts";
import { manyCase } from "../helpers/many-cases.ts";
import { aCase, scratchFolder, withEntry } from "./cases.ts";
import { START, withNotes } from "./notes.ts";
import { aSafe, filesIn, filesWith, othersSafe, put, textIn } from "./safes.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  const scratch = await scratchFolder();
  onTestFinished(scratch.remove);
  folder = scratch.folder;
  path = join(folder, "case-20260304-abcdef.json");
});

/** Saves the case with two entries, four, and so on, into the safe. */
async function saved(entries = 10): Promise<void> {
  const low = lowCase(path, withNotes(aCase(), 1), { safe: aSafe });
  await low.write();
  while (low.data.entries.length < entries) {
    low.data = withNotes(low.data, 2);
    await low.write();
  }
}

const entriesAt = async (at = path): Promise<number> => {
  const read = await readCaseFile(at, aSafe);
  if (!read.ok) throw new Error(read.fault);
  expect(chainFault(read.value.file)).toBeNull();
  return read.value.file.entries.length;
};

describe("a case in a safe", () => {
  test("is on the disk what it would be without, once it is taken out", async () => {
    const file = withNotes(aCase(), 3);
    await lowCase(path, file, { safe: aSafe }).write();
    expect(await textIn(aSafe, await readFile(path))).toBe(Buffer.concat([...caseBytes()(file)]).toString());
    expect((await stat(path)).mode & 0o777).toBe(0o600);
  });

  test("with anything written in it is read back whole, and nothing of it stands in the files", async () => {
    const secret = fc.array(anyText, { minLength: 1, maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(secret, async (texts) => {
        const file = texts.reduce(
          (all, text) => withEntry(all, { kind: "note", text: `hush ${text}` }),
          aCase(),
        );
        await lowCase(path, file, { safe: aSafe }).write();
        const read = await readCaseFile(path, aSafe);
        expect(read.ok && read.value.file.entries.slice(1)).toMatchObject(file.entries.slice(1));
        expect(await filesWith(folder, "hush", "bench test", "20260304")).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test("is added to in one go, and the state before stays in the safe too", async () => {
    await saved(4);
    const becomes = await appendTo(path, (file) => ({ ok: true, value: withNotes(file, 1) }), {
      safe: aSafe,
    });
    expect(becomes.ok).toBe(true);
    expect([await entriesAt(), await entriesAt(lastGoodOf(path))]).toEqual([5, 4]);
    expect(await filesWith(folder, "note", "bench")).toEqual([]);
  });

  test("is refused in words without its passphrase, and left as it was", async () => {
    await saved();
    const before = await filesIn(folder);
    const fault = expect.stringMatching(/^it is encrypted, and no passphrase was given for it\.$/);
    expect(await openCase(path)).toMatchObject({ ok: false, fault });
    expect(await holdCase(path)).toMatchObject({ ok: false, fault });
    const others = expect.stringMatching(/^it was encrypted with another passphrase/);
    expect(await openCase(path, [], othersSafe)).toMatchObject({ ok: false, fault: others });
    expect(await holdCase(path, { safe: othersSafe })).toMatchObject({ ok: false, fault: others });
    expect(await filesIn(folder)).toEqual(before);
  });
});

describe("in a folder that was encrypted since the console was started without a passphrase", () => {
  const refusal = { ok: false, fault: expect.stringMatching(/^this folder is encrypted, .* start again/) };

  test("no case is made or opened to be written", async () => {
    await lowCase(path, aCase()).write();
    await writeFile(markerOf(folder), put(aSafe, ""));
    const { protocol } = aCase();
    const now = { ms: START, offset: 0 };
    expect(await createCase({ folder, protocol, operator: "AB", now })).toMatchObject(refusal);
    expect(await holdCase(path)).toMatchObject(refusal);
    expect(await readdir(folder)).toEqual([basename(path), basename(markerOf(folder))]);
  });

  test("a list leaves no index that can be read", async () => {
    await writeFile(markerOf(folder), put(aSafe, ""));
    for (let n = 0; n < 50; n++) await lowCase(newCasePath(folder, manyCase(n).id), manyCase(n)).write();
    expect(await listCases(folder, { summariser: SUMMARISER })).toHaveLength(50);
    await expect(stat(indexOf(folder))).rejects.toMatchObject({ code: "ENOENT" });
  });
});

describe("a case that was not encrypted yet, in an encrypted folder", () => {
  test("is opened like any other, and encrypted by the next save", async () => {
    await lowCase(path, withNotes(aCase(), 2)).write();
    await writeFile(markerOf(folder), put(aSafe, ""));
    for (let more = 0; more < 2; more++)
      expect(
        await appendTo(path, (file) => ({ ok: true, value: withNotes(file, 1) }), { safe: aSafe }),
      ).toMatchObject({
        ok: true,
      });
    expect(await entriesAt()).toBe(5);
    expect(await filesWith(folder, "note")).toEqual([]);
  });
});

describe("beside a case in a safe", () => {
  test("what is half typed is in it too", async () => {
    const keeper = keepBeside(path, aSafe);
    keeper.keep([{ text: "n hush" }]);
    await keeper.close();
    expect(await filesWith(folder, "hush")).toEqual([]);
    expect(await readBeside(path, aSafe)).toEqual([{ text: "n hush" }]);
    expect(await readBeside(path)).toBeNull();
    expect(await readBeside(path, othersSafe)).toBeNull();
  });

  test("the index is in it too, and spares reading every case again", async () => {
    for (let n = 0; n < 50; n++)
      await lowCase(newCasePath(folder, manyCase(n).id), manyCase(n), { safe: aSafe }).write();
    let read = 0;
    const summariser = {
      ...SUMMARISER,
      of: (file: Parameters<typeof SUMMARISER.of>[0]) => {
        read += 1;
        return SUMMARISER.of(file);
      },
    };
    const first = await listCases(folder, { summariser, safe: aSafe });
    const second = await listCases(folder, { summariser, safe: aSafe });
    expect([read, second.length]).toEqual([50, 50]);
    expect(second).toEqual(first);
    expect(await readdir(folder)).toContain(basename(indexOf(folder)));
    expect(await filesWith(folder, "invented", "label", "operation")).toEqual([]);
    const unread = await listCases(folder, { summariser });
    expect(new Set(unread.map(({ fault }) => fault))).toEqual(
      new Set(["it is encrypted, and no passphrase was given for it."]),
    );
  });

  test("the second copy is in it too", async () => {
    const copies = await scratchFolder();
    onTestFinished(copies.remove);
    const file = withNotes(aCase(), 2);
    expect(await copyOnce(copies.folder, path, file, aSafe)).toBeNull();
    expect(await entriesAt(copyOf(path, copies.folder))).toBe(3);
    expect(await filesWith(copies.folder, "note")).toEqual([]);
  });
});

describe("another program's doing", () => {
  async function watched() {
    await saved(4);
    const asRead = await readCaseFile(path, aSafe);
    if (!asRead.ok) throw new Error(asRead.fault);
    const told: string[] = [];
    const { value } = asRead;
    const low = lowCase(path, value.file, {
      asRead: value,
      safe: aSafe,
      onForeign: (words) => told.push(words),
    });
    const save = async () => {
      low.data = withNotes(low.data, 1);
      await low.write();
    };
    return { save, told };
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
    expect(await entriesAt()).toBe(5);
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
    await saved();
    await cut();
    const before = await filesIn(folder);
    const opened = await openCase(path, [], aSafe);
    expect(opened.ok && opened.value.recovered).toMatch(TOLD);
    expect(opened.ok && opened.value.file.entries).toHaveLength(8);
    expect(await filesIn(folder)).toEqual(before);
  });

  test("is opened from the second copy where that is longer", async () => {
    await saved();
    const copy = join(folder, "copy");
    await writeFile(copy, await readFile(path));
    await cut();
    const opened = await openCase(path, [copy], aSafe);
    expect(opened.ok && opened.value.file.entries).toHaveLength(10);
  });

  test("is repaired into the safe, and what was there is kept as it was", async () => {
    await saved();
    await cut();
    const damaged = await readFile(path);
    const held = await holdCase(path, { safe: aSafe });
    if (!held.ok) throw new Error(held.fault);
    await held.value.release();
    expect(held.value.recovered).toMatch(TOLD);
    expect(await entriesAt()).toBe(9);
    expect(await readFile(`${path}.damaged-1`)).toEqual(damaged);
    expect(await filesWith(folder, "note")).toEqual([]);
  });

  test("that was there without any copy is refused in words, and left", async () => {
    await saved(2);
    await cut();
    const damaged = await readFile(path);
    expect(await holdCase(path, { safe: aSafe })).toMatchObject({
      ok: false,
      fault: expect.stringMatching(/^it is encrypted and was damaged or changed, .* read in part\.$/),
    });
    expect(await readFile(path)).toEqual(damaged);
  });

  test("that is gone is written again from its last good copy", async () => {
    await saved();
    await rm(path);
    const opened = await openCase(path, [], aSafe);
    expect(opened.ok && opened.value.recovered).toMatch(/^The file of this case is missing or empty/);
    expect(await openCase(path, [], plain)).toMatchObject({ ok: false, fault: "there is no such file." });
  });
});

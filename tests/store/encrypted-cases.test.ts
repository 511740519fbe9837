// Cases in an encrypted folder: kept, copied, listed, watched and recovered as others are, and nothing of them readable.

import { readdir, readFile, stat, writeFile } from "node:fs/promises";
import { basename } from "node:path";
import fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { SUMMARISER } from "../../src/reports/case-summary.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { caseBytes } from "../../src/store/case-bytes.ts";
import { indexOf } from "../../src/store/case-index.ts";
import { listCases } from "../../src/store/case-list.ts";
import { newCasePath } from "../../src/store/folder.ts";
import { keepBeside, readBeside } from "../../src/store/half-typed.ts";
import { markerOf } from "../../src/store/keyhole.ts";
import { lastGoodOf } from "../../src/store/last-good.ts";
import { appendTo, createCase, holdCase, openCase } from "../../src/store/open-case.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { copyOf, copyOnce } from "../../src/store/second-copy.ts";
import { anyText } from "../helpers/any-text.ts";
import { manyCase } from "../helpers/many-cases.ts";
import { aCase, withEntry } from "./cases.ts";
import { START, withNotes } from "./notes.ts";
import { aSafe, entriesInSafe, filesIn, filesWith, othersSafe, put, savedInSafe, textIn } from "./safes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

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
    await savedInSafe(path, 4);
    const becomes = await appendTo(path, (file) => ({ ok: true, value: withNotes(file, 1) }), {
      safe: aSafe,
    });
    expect(becomes.ok).toBe(true);
    expect([await entriesInSafe(path), await entriesInSafe(lastGoodOf(path))]).toEqual([5, 4]);
    expect(await filesWith(folder, "note", "bench")).toEqual([]);
  });

  test("is refused in words without its passphrase, and left as it was", async () => {
    await savedInSafe(path);
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
    expect(await entriesInSafe(path)).toBe(5);
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
    const copies = await testFolder();
    const file = withNotes(aCase(), 2);
    expect(await copyOnce(copies.folder, path, file, aSafe)).toBeNull();
    expect(await entriesInSafe(copyOf(path, copies.folder))).toBe(3);
    expect(await filesWith(copies.folder, "note")).toEqual([]);
  });
});

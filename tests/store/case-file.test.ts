// The case file: what a save writes, what a load gives back, and what is refused.

import { readFile, writeFile } from "node:fs/promises";
import { beforeEach, describe, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { caseAdapter, lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { faultWords } from "../../src/store/fault-words.ts";
import { aCase, withEntry } from "./cases.ts";
import { noteAt, withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let path: string;
beforeEach(async () => {
  ({ path } = await testFolder());
});

const save = (file: CaseFile) => lowCase(path, file).write();
const text = () => readFile(path, "utf8");

async function load(): Promise<CaseFile> {
  const file = await caseAdapter(path).read();
  if (file === null) throw new Error("nothing was read");
  return file;
}

/** Why a save was refused, in the words a person reads. */
const refusal = (file: CaseFile) =>
  save(file).then(
    () => null,
    (error: unknown) => faultWords(error),
  );

describe("a saved case", () => {
  test("is on the disk, also where NODE_ENV says that this is a test", async () => {
    expect(process.env.NODE_ENV).toBe("test");
    await save(withNotes(aCase(), 3));
    expect((await load()).entries).toHaveLength(4);
  });

  test("has one line for each entry, in order", async () => {
    await save(withNotes(aCase(), 3));
    const lines = (await text()).split("\n").filter((line) => line.startsWith('    {"id":"e'));
    expect(lines.map((line) => JSON.parse(line.replace(/,$/, "")).seq)).toEqual([1, 2, 3, 4]);
  });

  test("keeps every line that was there when an entry is added", async () => {
    const low = lowCase(path, withNotes(aCase(), 3));
    await low.write();
    const before = (await text()).split("\n");
    low.data = withNotes(low.data, 1);
    await low.write();
    const after = (await text()).split("\n");
    expect(after.slice(0, before.length - 5)).toEqual(before.slice(0, -5));
    expect(after).toHaveLength(before.length + 1);
  });

  test("is the same file whether saved entry by entry or at once", async () => {
    const low = lowCase(path, aCase());
    for (let i = 0; i < 20; i++) {
      low.data = withNotes(low.data, 1);
      await low.write();
    }
    const bitByBit = await text();
    await save(withNotes(aCase(), 20));
    expect(await text()).toBe(bitByBit);
  });

  test("comes back as it went in, with the hash of what came before in every entry", async () => {
    const file = withNotes(aCase(), 3);
    await save(file);
    const back = await load();
    expect(back).toMatchObject(file);
    expect(back.entries.map((entry) => "prev" in entry)).toEqual([true, true, true, true]);
    expect(chainFault(back)).toBeNull();
  });

  test("does not change when it is loaded and saved", async () => {
    await save(withNotes(aCase(), 3));
    const before = await text();
    await save(await load());
    expect(await text()).toBe(before);
  });

  test("goes on from where another session left it", async () => {
    await save(withNotes(aCase(), 3));
    await save(withNotes(await load(), 3));
    const back = await load();
    expect(back.entries).toHaveLength(7);
    expect(chainFault(back)).toBeNull();
  });

  test("is written afresh when it is another case than before", async () => {
    const low = lowCase(path, withNotes(aCase(), 3));
    await low.write();
    low.data = { ...aCase(), label: "another", entries: [...aCase().entries, noteAt(2, "other")] };
    await low.write();
    const back = await load();
    expect([back.label, back.entries.length]).toEqual(["another", 2]);
    expect(chainFault(back)).toBeNull();
  });
});

test("what a newer minor version added survives a load and a save, wherever it stands", async () => {
  const file = withNotes(aCase(), 1);
  const added = {
    ...file,
    department: { name: "heart" },
    protocol: { ...file.protocol, added: 1, watch: { ...file.protocol.watch, added: [2] } },
    entries: [...file.entries, { ...noteAt(3), added: { deep: [1, { x: null }] } }],
  };
  await save(added);
  const first = await text();
  await save(withNotes(await load(), 1));
  const back = await load();
  expect(back.entries).toHaveLength(4);
  expect({ ...back, entries: back.entries.slice(0, 3) }).toMatchObject(added);
  expect(chainFault(back)).toBeNull();
  expect((await text()).startsWith(first.slice(0, first.indexOf('\n  ],\n  "seal"')))).toBe(true);
});

test.each([
  ["another alphabet", "гепарин 二 🫀"],
  ["half a character", "torn \ud83e here"],
  ["controls and quotes", 'a\u0000b\u001b[31m"\\\n\u2028'],
])("text with %s is kept to the letter", async (_, typed) => {
  await save(withEntry(aCase(), { kind: "note", text: typed, typed }));
  const back = await load();
  expect(back.entries[1]).toMatchObject({ text: typed, typed });
  expect(chainFault(back)).toBeNull();
  await save(withNotes(back, 1));
  expect(chainFault(await load())).toBeNull();
});

describe("what could not be read back is refused, and the file stays as it was", () => {
  const volume = { kind: "volume", direction: "in", fluid: "plasmalyte" };

  test.each<[string, (file: CaseFile) => CaseFile, string]>([
    [
      "a volume without an amount",
      (file) => withEntry(file, volume),
      "entry 2 is not valid: a volume is either",
    ],
    [
      "a value out of bounds",
      (file) => withEntry(file, { kind: "level", ml: -1 }),
      "entry 2 is not valid: at ml:",
    ],
    [
      "an entry out of order",
      (file) => ({ ...file, entries: [...file.entries, noteAt(3)] }),
      "entry 2 is out of order",
    ],
    [
      "striking out what is not there",
      (file) => withEntry(file, { kind: "void", target: "e9", reason: "never was" }),
      "entry 2 is not valid: it points at e9, which is not an earlier entry",
    ],
    [
      "an entry put right into nonsense",
      (file) => withEntry(withNotes(file, 1), { kind: "amend", target: "e2", changes: { text: 7 } }),
      "entry 3 is not valid: it would make e2 an entry that is not valid",
    ],
    [
      "a label of nothing",
      (file) => ({ ...file, label: "" }),
      "the head of the case is not valid: at label:",
    ],
  ])("%s", async (_, change, words) => {
    await save(aCase());
    const before = await text();
    expect(await refusal(change(aCase()))).toContain(words);
    expect(await text()).toBe(before);
  });

  test("and a sound case after it is saved", async () => {
    const low = lowCase(path, aCase());
    low.data = withEntry(aCase(), volume);
    await expect(low.write()).rejects.toThrow();
    low.data = withNotes(aCase(), 2);
    await low.write();
    expect(chainFault(await load())).toBeNull();
    expect((await load()).entries).toHaveLength(3);
  });
});

test("a file that is damaged is read as a fault, not as nothing", async () => {
  await writeFile(path, "{");
  await expect(load()).rejects.toThrow("the file is not JSON, or was cut short");
});

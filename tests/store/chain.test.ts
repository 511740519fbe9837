// The chain of hashes: what was changed, removed, moved or added by hand shows.

import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { beforeEach, describe, expect, test } from "vitest";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { aCase } from "./cases.ts";
import { noteAt, withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

type Json = {
  label: string;
  seal?: string;
  entries: { seq: number; id: string; text?: string; prev?: string }[];
};

let path: string;
beforeEach(async () => {
  ({ path } = await testFolder());
  await lowCase(path, withNotes(aCase(), 9)).write();
});

const json = async (): Promise<Json> => JSON.parse(await readFile(path, "utf8"));

async function read() {
  const found = await readCaseFile(path);
  if (!found.ok) throw new Error(found.fault);
  return found.value.file;
}

/** What the chain says after somebody has edited the file. */
async function faultAfter(edit: (file: Json) => void): Promise<string | null> {
  const file = await json();
  edit(file);
  await writeFile(path, JSON.stringify(file));
  return chainFault(await read());
}

const renumbered = (file: Json) =>
  file.entries.forEach((entry, i) => {
    Object.assign(entry, { seq: i + 1, id: `e${i + 1}` });
  });

test("every entry carries the SHA-256 of the canonical form of the one before it", async () => {
  const { entries } = await json();
  const [, second, third] = entries;
  // Written out by hand: keys in order, no white space.
  const canonical =
    `{"at":"2026-03-04T08:02:00.000+00:00","by":"AB","id":"e2","kind":"note",` +
    `"loggedAt":"2026-03-04T08:02:00.000+00:00","prev":"${second?.prev}","seq":2,"text":"note 2","typed":"n note 2"}`;
  expect(third?.prev).toBe(createHash("sha256").update(canonical).digest("hex"));
});

describe("an untouched case", () => {
  test("hangs together", async () => {
    expect(chainFault(await read())).toBeNull();
  });

  test("hangs together however its text is laid out", async () => {
    expect(await faultAfter(() => {})).toBeNull();
  });
});

const BY_HAND = "by hand, outside this program";
const note = (seq: number) => ({ ...(noteAt(seq) as Json["entries"][0]) });

/** Edits of ten entries, and what is said of them. */
const EDITS: [what: string, edit: (file: Json) => void, said: string][] = [
  ["changed", ({ entries }) => edit(entries[4]), `entry 5 was changed ${BY_HAND}.`],
  ["changed first", ({ entries }) => edit(entries[0]), `entry 1 was changed ${BY_HAND}.`],
  [
    "changed last",
    ({ entries }) => edit(entries[9]),
    `entry 10, the last, was changed ${BY_HAND}, or entries after it were removed.`,
  ],
  [
    "removed",
    ({ entries }) => entries.splice(4, 1),
    `entry 5 was removed ${BY_HAND}, after what is now entry 4.`,
  ],
  [
    "removed first",
    ({ entries }) => entries.shift(),
    `entry 1 was removed ${BY_HAND}, before what is now entry 1.`,
  ],
  [
    "removed last",
    ({ entries }) => entries.pop(),
    `entry 9, the last, was changed ${BY_HAND}, or entries after it were removed.`,
  ],
  [
    "three removed",
    ({ entries }) => entries.splice(4, 3),
    `entries 5 to 7 were removed ${BY_HAND}, after what is now entry 4.`,
  ],
  ["added", ({ entries }) => entries.splice(4, 0, note(5)), `entry 5 was added ${BY_HAND}.`],
  [
    "two added",
    ({ entries }) => entries.splice(4, 0, note(5), note(6)),
    `entries 5 to 6 were added ${BY_HAND}.`,
  ],
  ["added last", ({ entries }) => entries.push(note(11)), `entry 11 was added ${BY_HAND}.`],
  [
    "copied",
    ({ entries }) => entries.splice(5, 0, { ...(entries[4] as Json["entries"][0]) }),
    `entry 6 was added ${BY_HAND}: it is entry 5 once more, or was moved.`,
  ],
  [
    "moved by one",
    ({ entries }) => entries.splice(4, 0, ...entries.splice(5, 1)),
    `entry 5 was moved ${BY_HAND}: it stands as entry 6 now.`,
  ],
  [
    "moved back",
    ({ entries }) => entries.splice(7, 0, ...entries.splice(3, 1)),
    `entry 4 was moved ${BY_HAND}: it stands as entry 8 now.`,
  ],
  [
    "moved forward",
    ({ entries }) => entries.splice(2, 0, ...entries.splice(7, 1)),
    `entry 8 was moved ${BY_HAND}: it stands as entry 3 now.`,
  ],
];

function edit(entry: Json["entries"][0] | undefined): void {
  Object.assign(entry as object, { typed: "changed" });
}

describe("a case that somebody has edited", () => {
  test.each(EDITS)("shows which entry was %s", async (_, change, said) => {
    const found = await faultAfter((file) => {
      change(file);
      renumbered(file);
    });
    expect(found).toBe(said);
  });

  test("shows a changed head", async () => {
    expect(
      await faultAfter((file) => {
        file.label = "another";
      }),
    ).toBe(`the head of the case (id, label, protocol) was changed ${BY_HAND}.`);
  });

  test("shows a seal that was taken away", async () => {
    expect(
      await faultAfter((file) => {
        delete file.seal;
      }),
    ).toBe(`the seal was taken away ${BY_HAND}: entry 10, the last, may have been changed.`);
  });

  test("shows hashes that were taken away", async () => {
    expect(
      await faultAfter((file) => {
        delete file.seal;
        for (const entry of file.entries) delete entry.prev;
      }),
    ).toMatch(/^it carries no hashes/);
  });

  test("is told, however many of its entries were changed", async () => {
    await lowCase(path, withNotes(aCase(), 3000)).write();
    expect(await faultAfter(({ entries }) => entries.forEach(edit))).toMatch(/^from entry 1 on/);
  });
});

describe("a save of a case whose last entry was edited", () => {
  test.each<[string, (file: Json) => void, string]>([
    ["changed", ({ entries }) => edit(entries[9]), `entry 10 was changed ${BY_HAND}.`],
    ["left without its seal", (file) => delete file.seal, `entry 10 was changed ${BY_HAND}.`],
  ])("%s: does not hide it", async (_, change, said) => {
    await faultAfter(change);
    const edited = await readFile(path, "utf8");
    await lowCase(path, await read()).write();
    expect(chainFault(await read())).not.toBeNull();
    await writeFile(path, edited);
    await lowCase(path, withNotes(await read(), 3)).write();
    expect(chainFault(await read())).toBe(said);
    await lowCase(path, withNotes(await read(), 3)).write();
    expect(chainFault(await read())).toBe(said);
  });
});

test("a save does not make an edited case look untouched", async () => {
  await faultAfter(({ entries }) => {
    Object.assign(entries[4] as object, { text: "changed" });
    delete entries[7]?.prev;
  });
  await lowCase(path, withNotes(await read(), 3)).write();
  const { entries } = await json();
  expect(entries).toHaveLength(13);
  expect(entries[7]?.prev).toBeUndefined();
  expect(chainFault(await read())).toMatch(/^entry 5 was changed by hand/);
});

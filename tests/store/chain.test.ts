// The chain of hashes: what was changed, removed, moved or added by hand shows.

import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, onTestFinished, test } from "vitest";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { aCase, scratchFolder } from "./cases.ts";
import { noteAt, withNotes } from "./notes.ts";

type Json = { label: string; entries: { seq: number; id: string; text?: string; prev?: string }[] };

let path: string;
beforeEach(async () => {
  const scratch = await scratchFolder();
  onTestFinished(scratch.remove);
  path = join(scratch.folder, "case-20260304-abcdef.json");
  await lowCase(path, withNotes(aCase(), 9)).write();
});

const json = async (): Promise<Json> => JSON.parse(await readFile(path, "utf8"));

async function read() {
  const found = await readCaseFile(path);
  if (!found.ok) throw new Error(found.fault);
  return found.value;
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

describe("a case that somebody has edited", () => {
  test("shows a changed entry", async () => {
    expect(
      await faultAfter(({ entries }) => {
        Object.assign(entries[4] as object, { text: "changed" });
      }),
    ).toBe("entry 6 does not follow from entry 5: one of the two was changed, removed or added by hand.");
  });

  test("shows a removed entry", async () => {
    expect(
      await faultAfter((file) => {
        file.entries.splice(4, 1);
        renumbered(file);
      }),
    ).toMatch(/^entry 5 does not follow from entry 4:/);
  });

  test("shows an entry added in between", async () => {
    expect(
      await faultAfter((file) => {
        file.entries.splice(4, 0, { ...(noteAt(5) as Json["entries"][0]) });
        renumbered(file);
      }),
    ).toMatch(/^entry 5 was added by hand/);
  });

  test("shows two entries that changed places", async () => {
    expect(
      await faultAfter((file) => {
        file.entries.splice(
          4,
          2,
          file.entries[5] as Json["entries"][0],
          file.entries[4] as Json["entries"][0],
        );
        renumbered(file);
      }),
    ).toMatch(/^entry 5 does not follow from entry 4:/);
  });

  test("shows a changed head", async () => {
    expect(
      await faultAfter((file) => {
        file.label = "another";
      }),
    ).toMatch(/^entry 1 does not follow from the head of the case \(id, label, protocol\):/);
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
  expect(chainFault(await read())).toMatch(/^entry 6 does not follow/);
});

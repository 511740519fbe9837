// The list of cases and finding one of them.

import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { findCase, listCases } from "../../src/store/case-list.ts";
import { newCasePath } from "../../src/store/folder.ts";
import { aCase, withEntry } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
beforeEach(async () => {
  ({ folder } = await testFolder());
});

const saveAt = (path: string, file: CaseFile) => lowCase(path, file).write();
const save = (file: CaseFile) => saveAt(newCasePath(folder, file.id), file);
const openedOn = (day: string, file: CaseFile): CaseFile => {
  const [opened] = file.entries;
  const at = `${day}T08:00:00.000+01:00`;
  return { ...file, entries: [{ ...opened, at, loggedAt: at } as CaseFile["entries"][0]] };
};

describe("the list", () => {
  test("is empty where there is nothing, and where there is no folder", async () => {
    expect(await listCases(folder)).toEqual([]);
    expect(await listCases(join(folder, "gone"))).toEqual([]);
  });

  test("says of each case what it is, whether it is closed, and the operation as put right", async () => {
    const open = withEntry(withEntry(aCase("20260304-opened", "valve"), { kind: "plan", operation: "AVR" }), {
      kind: "amend",
      target: "e2",
      changes: { operation: "AVR and root" },
    });
    const closed = withEntry(aCase("20260304-closed", "bypass"), { kind: "closed", operator: "AB" });
    const reopened = withEntry(
      withEntry(aCase("20260304-twices", "twice"), { kind: "closed", operator: "AB" }),
      { kind: "reopened", operator: "AB", reason: "gas came late" },
    );
    for (const file of [open, closed, reopened]) await save(file);
    const list = await listCases(folder);
    expect(list).toHaveLength(3);
    expect(list).toEqual(
      expect.arrayContaining([
        {
          path: newCasePath(folder, open.id),
          id: open.id,
          label: "valve",
          opened: "2026-03-04T08:01:00.000+00:00",
          entries: 3,
          state: "open",
          operation: "AVR and root",
        },
        expect.objectContaining({ id: closed.id, state: "closed", entries: 2 }),
        expect.objectContaining({ id: reopened.id, state: "open", entries: 3 }),
      ]),
    );
  });

  test("has the newest first, and damaged cases among them with their fault", async () => {
    await save(openedOn("2026-03-02", aCase("20260302-aaaaaa")));
    await save(openedOn("2026-03-04", aCase("20260304-aaaaaa")));
    await writeFile(newCasePath(folder, "20260303-broken"), '{"format":"pumpside-case"');
    await mkdir(newCasePath(folder, "20260301-folder"));
    const list = await listCases(folder);
    expect(list.map(({ id, fault }) => [id, fault])).toEqual([
      ["20260304-aaaaaa", undefined],
      ["20260303-broken", "the file is not JSON, or was cut short."],
      ["20260302-aaaaaa", undefined],
      ["20260301-folder", "it is a folder, not a case file."],
    ]);
  });

  test("has a case under any name, and passes over files of other programs", async () => {
    await saveAt(join(folder, "copied.json"), aCase("20260304-copied"));
    await writeFile(join(folder, "settings.json"), "{}");
    await writeFile(join(folder, "case-20260304-abcdef.json.lock"), "{}");
    await writeFile(join(folder, "readme.txt"), "hello");
    expect((await listCases(folder)).map(({ id }) => id)).toEqual(["20260304-copied"]);
  });
});

describe("finding a case", () => {
  const first = aCase("20260304-aaaaaa", "valve");
  const second = aCase("20260304-bbbbbb", "valve");
  const third = aCase("20260304-cccccc", "room 4/B");

  beforeEach(async () => {
    for (const file of [first, second, third]) await save(withNotes(file, 1));
  });

  test.each([
    ["its id", () => second.id, () => newCasePath(folder, second.id)],
    ["its path", () => newCasePath(folder, first.id), () => newCasePath(folder, first.id)],
    ["the name of its file", () => `case-${first.id}.json`, () => newCasePath(folder, first.id)],
    ["its label, also one with a stroke in it", () => third.label, () => newCasePath(folder, third.id)],
  ])("by %s", async (_, asked, found) => {
    expect(await findCase(folder, asked())).toEqual({ ok: true, value: found() });
  });

  test("by a label that several have names them by their ids", async () => {
    const outcome = await findCase(folder, "valve");
    expect(outcome.ok ? "" : outcome.fault).toMatch(
      /^2 cases have that label: name one by its id, 20260304-(aaaaaa|bbbbbb) or 20260304-(aaaaaa|bbbbbb)\.$/,
    );
  });

  test.each(["nobody", "", ".", "src"])(
    "that is not there (%j) says so, and repeats nothing of it",
    async (asked) => {
      expect(await findCase(folder, asked)).toEqual({
        ok: false,
        fault: "no case here has that label or id: `pumpside list` shows the cases.",
      });
    },
  );
});

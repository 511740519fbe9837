// Making, opening, holding and adding to a case.

import { chmod, readdir, readFile, stat, symlink, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { lastGoodOf } from "../../src/store/last-good.ts";
import { lockCase, lockOf } from "../../src/store/lock.ts";
import { appendTo, createCase, holdCase, openCase } from "../../src/store/open-case.ts";
import { aCase } from "./cases.ts";
import { START, withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

const now = { ms: START, offset: 60 };
const asked = () => ({ folder, label: "left main", protocol: adultProtocol, operator: "AB", now });

async function made(): Promise<{ path: string; file: CaseFile }> {
  const outcome = await createCase(asked());
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value;
}

async function read(at: string): Promise<CaseFile> {
  const outcome = await openCase(at);
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value.file;
}

const save = (file: CaseFile) => lowCase(path, file).write();

describe("a new case", () => {
  test("is on the disk with its first entry, for its owner only", async () => {
    const { path: at, file } = await made();
    expect(at).toMatch(/case-20260304-[a-z]{6}\.json$/);
    expect((await stat(at)).mode & 0o777).toBe(0o600);
    expect(await read(at)).toMatchObject(file);
    expect(file).toMatchObject({ format: "pumpside-case", version: 1, label: "left main" });
    expect(file.entries).toEqual([
      {
        id: "e1",
        seq: 1,
        at: "2026-03-04T09:00:00.000+01:00",
        loggedAt: "2026-03-04T09:00:00.000+01:00",
        by: "AB",
        typed: "",
        kind: "opened",
        operator: "AB",
      },
    ]);
  });

  test("makes its folder, for its owner only, and says where the case took place", async () => {
    const deep = join(folder, "a", "b");
    const outcome = await createCase({ ...asked(), folder: deep, place: "theatre 3" });
    expect(outcome).toMatchObject({ ok: true, value: { file: { entries: [{ place: "theatre 3" }] } } });
    for (const one of [deep, join(folder, "a")]) expect((await stat(one)).mode & 0o777).toBe(0o700);
  });

  test("without a label is called by its id", async () => {
    const outcome = await createCase({ ...asked(), label: undefined });
    if (!outcome.ok) throw new Error(outcome.fault);
    expect(outcome.value.file.label).toBe(outcome.value.file.id);
  });

  test("is the same file after a load and a save", async () => {
    const { path: at } = await made();
    const before = await readFile(at, "utf8");
    await lowCase(at, await read(at)).write();
    expect(await readFile(at, "utf8")).toBe(before);
  });

  test("can be made by many at once", async () => {
    const outcomes = await Promise.all(Array.from({ length: 12 }, () => createCase(asked())));
    expect(outcomes.filter(({ ok }) => !ok)).toEqual([]);
    expect(await readdir(folder)).toHaveLength(12);
  });

  test("with a label that is too long, or in a place that is a file, is refused in a sentence", async () => {
    expect(await createCase({ ...asked(), label: "x".repeat(81) })).toMatchObject({
      fault: expect.stringMatching(/^the case can't be made: the head of the case is not valid: at label: /),
    });
    await writeFile(path, "");
    expect(await createCase({ ...asked(), folder: path })).toEqual({
      ok: false,
      fault: "the folder for cases can't be used: a file stands where the folder should be.",
    });
    expect(await readdir(folder)).toEqual(["case-20260304-abcdef.json"]);
  });
});

describe("a case that is held", () => {
  test("is read under its lock, and let go again", async () => {
    await save(withNotes(aCase(), 2));
    const held = await holdCase(path);
    if (!held.ok) throw new Error(held.fault);
    expect(held.value.file.entries).toHaveLength(3);
    expect(await holdCase(path)).toMatchObject({ fault: expect.stringMatching(/^another console has/) });
    await held.value.release();
    expect(await readdir(folder)).toHaveLength(1);
  });

  test("is one case by whatever name it goes", async () => {
    await save(aCase());
    const other = join(folder, "other.json");
    await symlink(path, other);
    const held = await holdCase(other);
    if (!held.ok) throw new Error(held.fault);
    expect(held.value.path).toBe(path);
    expect(await holdCase(path)).toMatchObject({ ok: false });
    await held.value.release();
  });

  test("can be read by others", async () => {
    await save(aCase());
    const lock = await lockCase(path);
    expect((await read(path)).entries).toHaveLength(1);
    if (lock.ok) await lock.value.release();
  });

  test("and turns out damaged leaves no lock behind", async () => {
    await writeFile(path, "{");
    expect(await holdCase(path)).toEqual({ ok: false, fault: "the file is not JSON, or was cut short." });
    expect(await readdir(folder)).toHaveLength(1);
  });
});

describe("adding to a case in one go", () => {
  test("saves what was added, and lets the case go", async () => {
    const { path: at } = await made();
    const outcome = await appendTo(at, (file) => ({ ok: true, value: withNotes(file, 2) }));
    expect(outcome.ok).toBe(true);
    const back = await read(at);
    expect(back.entries).toHaveLength(3);
    expect(chainFault(back)).toBeNull();
    expect(await readdir(folder)).toEqual([basename(at), basename(lastGoodOf(at))]);
  });

  test("at the same time from many places loses nothing", async () => {
    const { path: at } = await made();
    const adding = Array.from({ length: 12 }, () =>
      appendTo(at, (file) => ({ ok: true, value: withNotes(file, 1) })),
    );
    expect((await Promise.all(adding)).filter(({ ok }) => !ok)).toEqual([]);
    const back = await read(at);
    expect(back.entries).toHaveLength(13);
    expect(chainFault(back)).toBeNull();
  });

  test("writes nothing when what was typed is refused, or is not valid", async () => {
    const { path: at } = await made();
    const before = await readFile(at, "utf8");
    expect(await appendTo(at, () => ({ ok: false, fault: "no such stroke." }))).toEqual({
      ok: false,
      fault: "no such stroke.",
    });
    const wrong = (file: CaseFile): CaseFile => ({ ...file, entries: [...file.entries, ...file.entries] });
    expect(await appendTo(at, (file) => ({ ok: true, value: wrong(file) }))).toEqual({
      ok: false,
      fault: "not saved: entry 2 is out of order.",
    });
    expect(await readFile(at, "utf8")).toBe(before);
    expect(await readdir(folder)).toHaveLength(1);
  });

  test("lets the case go even when the one who adds breaks down", async () => {
    const { path: at } = await made();
    const broken = appendTo(at, () => {
      throw new TypeError("a mistake");
    });
    await expect(broken).rejects.toThrow("a mistake");
    expect(await readdir(folder)).toHaveLength(1);
  });

  test("to a case that a console holds is refused, with who holds it", async () => {
    const { path: at } = await made();
    const lock = await lockCase(at);
    expect(await appendTo(at, (file) => ({ ok: true, value: file }))).toMatchObject({
      fault: expect.stringContaining(`process ${process.pid}`),
    });
    if (lock.ok) await lock.value.release();
  });

  test("keeps the permissions narrow when somebody has widened them", async () => {
    const { path: at } = await made();
    await chmod(at, 0o644);
    await appendTo(at, (file) => ({ ok: true, value: withNotes(file, 1) }));
    expect((await stat(at)).mode & 0o777).toBe(0o600);
    expect(lockOf(at)).toBe(`${at}.lock`);
  });
});

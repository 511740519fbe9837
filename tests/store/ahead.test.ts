// A copy that knows more of a case than its own file, and one that tells another story.

import { mkdir, readdir, readFile, stat, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { beforeEach, describe, expect, onTestFinished, test, vi } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { aheadOf } from "../../src/store/ahead.ts";
import { lowCase } from "../../src/store/case-adapter.ts";
import { appendTo, holdCase, toldOf } from "../../src/store/open-case.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { copyOf, copyOnce } from "../../src/store/second-copy.ts";
import { forgetUnsaved, keepUnsaved, unsavedOf } from "../../src/store/unsaved.ts";
import { aCase, withEntry } from "./cases.ts";
import { withNotes } from "./notes.ts";
import { testFolder } from "./test-folder.ts";

let copies: string;
let path: string;
beforeEach(async () => {
  const { folder, path: inFolder } = await testFolder();
  path = inFolder;
  copies = join(folder, "copies");
  await mkdir(copies);
  vi.stubEnv("XDG_DATA_HOME", join(folder, "home"));
  onTestFinished(() => void vi.unstubAllEnvs());
});

const write = (to: string, file: CaseFile) => lowCase(to, file).write();
const short = withNotes(aCase(), 3);
const long = withNotes(short, 4);
const other = withNotes(withEntry(short, { kind: "note", text: "another story" }), 1);

/** The case as its own file holds it. */
async function read(at: string): Promise<CaseFile> {
  const found = await readCaseFile(at);
  if (!found.ok) throw new Error(found.fault);
  return found.value.file;
}

describe("a copy is ahead", () => {
  const ahead = async (...files: CaseFile[]) => {
    await write(path, short);
    const names = files.map((_, place) => join(copies, `copy-${place}.json`));
    for (const [place, file] of files.entries()) await write(names[place] as string, file);
    return aheadOf(await read(path), names);
  };

  test("when it goes on from the last entry of the case's own file; the longest of several", async () => {
    expect((await ahead(withNotes(short, 1), long, short))?.entries).toHaveLength(8);
  });

  test("not when it is the same, or shorter, or another case, or tells another story from earlier on", async () => {
    expect(await ahead(short, withNotes(aCase(), 1))).toBeNull();
    expect(await ahead(withNotes({ ...long, id: "20260304-zzzzzz" }, 1))).toBeNull();
    const early = withNotes(withEntry(aCase(), { kind: "note", text: "another story" }), 9);
    expect(await ahead(early)).toBeNull();
  });

  test("not when somebody has changed what it has more", async () => {
    await write(path, short);
    const copy = copyOf(path, copies);
    await write(copy, long);
    await writeFile(copy, (await readFile(copy, "utf8")).replace('"text":"note 6"', '"text":"nothing"'));
    expect(await aheadOf(await read(path), [copy])).toBeNull();
  });

  test("not when it can't be read", async () => {
    await write(path, short);
    await writeFile(copyOf(path, copies), "{");
    expect(await aheadOf(await read(path), [copyOf(path, copies), join(copies, "none.json")])).toBeNull();
    await write(copyOf(path, copies), long);
    const text = await readFile(copyOf(path, copies));
    await writeFile(copyOf(path, copies), Buffer.concat([text, Buffer.of(0xff)]));
    expect(await aheadOf(await read(path), [copyOf(path, copies)])).toBeNull();
  });
});

test("a case that is held tells what a copy has more, and touches nothing before it is saved", async () => {
  await write(path, short);
  await write(copyOf(path, copies), long);
  const held = await holdCase(path, { copies: [copyOf(path, copies)] });
  if (!held.ok) return expect.unreachable(held.fault);
  expect(held.value.file.entries).toHaveLength(4);
  expect(held.value.ahead?.entries).toHaveLength(8);
  expect(toldOf(held.value)).toMatch(
    /^4 entries were taken in from a copy, up to entry 8 \(\d\d:\d\d:\d\d\): the case's own file did not have them\.$/,
  );
  await held.value.release();
  expect((await read(path)).entries).toHaveLength(4);
});

test("a stroke from a script goes behind what a copy has more", async () => {
  await write(path, short);
  await write(copyOf(path, copies), long);
  const next = (file: CaseFile) => ({ ok: true, value: withNotes(file, 1) }) as const;
  expect(await appendTo(path, next, { copies: [copyOf(path, copies)] })).toMatchObject({ ok: true });
  expect((await read(path)).entries).toHaveLength(9);
});

describe("a second copy", () => {
  const asides = async () => (await readdir(copies)).filter((name) => name.includes("replaced"));

  test("that is an earlier state is written over", async () => {
    await write(copyOf(path, copies), short);
    expect(await copyOnce(copies, path, long)).toBeNull();
    expect([(await read(copyOf(path, copies))).entries.length, await asides()]).toEqual([8, []]);
  });

  test("that tells another story keeps a name of its own", async () => {
    await write(copyOf(path, copies), other);
    expect(await copyOnce(copies, path, long)).toBeNull();
    expect((await read(copyOf(path, copies))).entries).toHaveLength(8);
    const [aside] = await asides();
    expect((await read(join(copies, aside as string))).entries).toHaveLength(6);
  });
});

describe("what could be saved nowhere else", () => {
  test("lies in a folder of its owner's, and goes once the case's own file holds it", async () => {
    const kept = await keepUnsaved(path, long);
    expect(unsavedOf(path)).toContain(kept);
    expect(basename(kept as string)).toBe(basename(path));
    expect((await stat(join(kept as string, ".."))).mode & 0o777).toBe(0o700);
    await forgetUnsaved(path, short);
    expect((await read(kept as string)).entries).toHaveLength(8);
    await forgetUnsaved(path, withNotes(long, 1));
    await expect(stat(kept as string)).rejects.toThrow("ENOENT");
  });

  test("never takes the place of what an earlier session left", async () => {
    const kept = (await keepUnsaved(path, other)) as string;
    await keepUnsaved(path, long);
    expect((await read(kept)).entries).toHaveLength(8);
    expect((await read(`${kept}.replaced-1`)).entries).toHaveLength(6);
  });

  test("goes to the next place where the first takes nothing", async () => {
    vi.stubEnv("XDG_DATA_HOME", "/proc/nowhere");
    vi.stubEnv("TMPDIR", copies);
    expect(await keepUnsaved(path, long)).toContain(copies);
  });
});

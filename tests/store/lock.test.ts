// One writer at a time, and a writer that died is found out.

import { spawnSync } from "node:child_process";
import { readdir, readFile, stat, writeFile } from "node:fs/promises";
import { hostname } from "node:os";
import { basename, join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import type { Outcome } from "../../src/format/outcome.ts";
import { isLocked, type Lock, lockCase, lockOf, type TakeOver } from "../../src/store/lock.ts";
import { type Holder, thisHolder } from "../../src/store/lock-holder.ts";
import { testFolder } from "./test-folder.ts";

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

/** A holder whose process has ended. */
const dead = (facts: Partial<Holder> = {}): Holder => ({
  ...thisHolder(),
  pid: spawnSync(process.execPath, ["-e", ""]).pid,
  ...facts,
});

const leave = (holder: Holder, at = lockOf(path)) => writeFile(at, JSON.stringify(holder));
const faultOf = (outcome: Outcome<unknown>) => (outcome.ok ? null : outcome.fault);

async function taken(takeOver?: TakeOver): Promise<Lock> {
  const outcome = await lockCase(path, 0, takeOver);
  if (!outcome.ok) throw new Error(outcome.fault);
  return outcome.value;
}

describe("a lock", () => {
  test("lies beside the case for its owner only, and says process and computer and nothing else", async () => {
    const lock = await taken();
    expect(await readdir(folder)).toEqual([basename(lockOf(path))]);
    expect((await stat(lockOf(path))).mode & 0o777).toBe(0o600);
    const holder = JSON.parse(await readFile(lockOf(path), "utf8"));
    expect(holder).toMatchObject({ pid: process.pid, host: hostname() });
    expect(Object.keys(holder).toSorted()).toEqual(["host", "pid", "since", "space", "started", "token"]);
    await lock.release();
    expect(await readdir(folder)).toEqual([]);
  });

  test("refuses a second holder with who holds it", async () => {
    const lock = await taken();
    expect(faultOf(await lockCase(path))).toMatch(
      new RegExp(
        `^another console has the case open \\(process ${process.pid} on .+, since \\d\\d:\\d\\d:\\d\\d on \\d{4}-\\d\\d-\\d\\d\\): leave it there first\\.$`,
      ),
    );
    expect(await isLocked(path)).toBe(true);
    await lock.release();
    expect(await isLocked(path)).toBe(false);
    await (await taken()).release();
  });

  test("is taken by one of many who ask at once", async () => {
    const outcomes = await Promise.all(Array.from({ length: 20 }, () => lockCase(path)));
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    for (const one of outcomes) if (one.ok) await one.value.release();
    expect(await readdir(folder)).toEqual([]);
  });

  test("is waited for as long as was asked", async () => {
    const lock = await taken();
    const waiting = lockCase(path, 5000);
    await new Promise((resolve) => setTimeout(resolve, 60));
    await lock.release();
    const second = await waiting;
    expect(second.ok).toBe(true);
    if (second.ok) await second.value.release();
  });

  test("released twice does not release the next holder's", async () => {
    const lock = await taken();
    await lock.release();
    const next = await taken();
    await lock.release();
    expect(await isLocked(path)).toBe(true);
    await next.release();
  });

  test("is let go when its process ends by itself", async () => {
    const script = `
      const { lockCase } = await import(${JSON.stringify(new URL("../../src/store/lock.ts", import.meta.url).href)});
      const { ok } = await lockCase(${JSON.stringify(path)});
      process.exit(ok ? 7 : 1);`;
    const { status } = spawnSync(process.execPath, ["--input-type=module", "-e", script]);
    expect(status).toBe(7);
    expect(await readdir(folder)).toEqual([]);
  });

  test("in a folder that is not there is refused in a sentence", async () => {
    const outcome = await lockCase(join(folder, "gone", "case-20260304-abcdef.json"));
    expect(faultOf(outcome)).toBe("the case can't be locked: the folder is gone.");
  });
});

describe("a lock whose process is gone", () => {
  test("is taken over", async () => {
    await leave(dead());
    expect(await isLocked(path)).toBe(false);
    const lock = await taken();
    expect(JSON.parse(await readFile(lockOf(path), "utf8")).pid).toBe(process.pid);
    await lock.release();
    expect(await readdir(folder)).toEqual([]);
  });

  test.runIf(process.platform === "linux")(
    "is known by its start, when its number is in use again",
    async () => {
      await leave({ ...thisHolder(), started: "another-boot 4242" });
      await (await taken()).release();
    },
  );

  test("is asked about where nobody has said that it may be taken over", async () => {
    await leave(dead());
    expect(await lockCase(path, 0, "none")).toEqual({
      ok: false,
      fault: expect.stringMatching(
        /^a console that had the case open ended without letting it go \(process \d+ on .+, since .+\)\.$/,
      ),
      mayBeTaken: "ended",
    });
    await (await taken("ended")).release();
  });

  test("is taken over by one of many", async () => {
    for (let round = 0; round < 20; round++) {
      await leave(dead({ pid: 2 ** 22 + 1 + round }));
      const outcomes = await Promise.all(Array.from({ length: 8 }, () => lockCase(path)));
      expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
      for (const one of outcomes) if (one.ok) await one.value.release();
      expect(await readdir(folder)).toEqual([]);
    }
  });

  test("is taken over even if another died while taking it over", async () => {
    const first = dead();
    await leave(first);
    await leave(dead(), `${lockOf(path)}.after-${first.token}`);
    await (await taken()).release();
    expect(await readdir(folder)).toEqual([]);
  });

  test("is left to the one who is taking it over just now", async () => {
    const first = dead();
    await leave(first);
    await leave(thisHolder(), `${lockOf(path)}.after-${first.token}`);
    expect(faultOf(await lockCase(path))).toMatch(/^another console has the case open/);
  });
});

describe("a lock that nothing is known about", () => {
  test("because it is another computer's is reported, not taken", async () => {
    await leave(dead({ host: "theatre-2" }));
    expect(faultOf(await lockCase(path))).toMatch(
      /on theatre-2, since .+\): leave it there first, or, if that computer is off, remove the file beside the case that ends in "\.lock"\.$/,
    );
    expect(await isLocked(path)).toBe(true);
  });

  test("because it is another computer's is taken over only by somebody who says so", async () => {
    await leave(dead({ host: "theatre-2" }));
    expect(await lockCase(path, 0, "ended")).toMatchObject({ ok: false, mayBeTaken: "elsewhere" });
    await (await taken("elsewhere")).release();
  });

  test("because its process has its number in another container is reported, not taken", async () => {
    await leave(dead({ space: "pid:[1]" }));
    expect(await lockCase(path)).toMatchObject({ ok: false, mayBeTaken: "elsewhere" });
  });

  test("but whose process runs here is never taken over", async () => {
    const lock = await taken();
    expect(await lockCase(path, 0, "elsewhere")).toMatchObject({ ok: false, mayBeTaken: null });
    await lock.release();
  });

  test.each(["", "{", '{"pid":0}', "null"])("because it reads %j is reported, not taken", async (text) => {
    await writeFile(lockOf(path), text);
    expect(faultOf(await lockCase(path))).toMatch(/^a lock that can't be read lies beside the case/);
    expect(await readFile(lockOf(path), "utf8")).toBe(text);
  });
});

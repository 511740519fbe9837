// Disks and folders that fail for real while a case is being kept: full, taken away, not to be written to.

import { spawnSync } from "node:child_process";
import { chmod, chown, mkdir, readdir, rename, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, onTestFinished, test } from "vitest";
import { chainFault } from "../../src/store/chain-fault.ts";
import { openFolder } from "../../src/store/folder.ts";
import { type Keeper, keepCase } from "../../src/store/keeper.ts";
import { lockCase } from "../../src/store/lock.ts";
import { createCase, type HeldCase, holdCase, openCase } from "../../src/store/open-case.ts";
import { aCase } from "../store/cases.ts";
import { START, withNotes } from "../store/notes.ts";
import { testFolder } from "../store/test-folder.ts";

let folder: string;
beforeEach(async () => {
  folder = join((await testFolder()).folder, "cases");
  await mkdir(folder);
});

const asked = () => ({
  folder,
  label: "fault",
  protocol: aCase().protocol,
  operator: "AB",
  now: { ms: START, offset: 0 },
});

/** A case in the folder, held and kept, with what the keeper told. */
async function keeping(): Promise<{ held: HeldCase; keeper: Keeper; told: (number | string)[] }> {
  const made = await createCase(asked());
  const held = made.ok ? await holdCase(made.value.path) : made;
  if (!held.ok) throw new Error(held.fault);
  const told: (number | string)[] = [];
  const keeper = keepCase({
    ...held.value,
    onSaved: (seq) => told.push(seq),
    onFault: (words) => told.push(words),
  });
  onTestFinished(async () => void (await keeper.close()));
  return { held: held.value, keeper, told };
}

async function onDisk(path: string): Promise<number> {
  const opened = await openCase(path);
  if (!opened.ok) throw new Error(opened.fault);
  expect(chainFault(opened.value.file)).toBeNull();
  return opened.value.file.entries.length;
}

const until = async (done: () => boolean): Promise<void> => {
  while (!done()) await new Promise((resolve) => setTimeout(resolve, 10));
};

describe("a disk", () => {
  const mount = (size: string) =>
    spawnSync("mount", ["-t", "tmpfs", "-o", `size=${size},mode=0700`, "tmpfs", folder]);
  const mayMount = process.platform === "linux" && process.getuid?.() === 0;

  test.skipIf(!mayMount)(
    "that is full (needs leave to mount one) is told, and saved to once there is room",
    async () => {
      if (mount("512k").status !== 0) return expect.unreachable("the disk could not be mounted");
      onTestFinished(() => void spawnSync("umount", ["-l", folder]));
      const { held, keeper, told } = await keeping();
      const filler = join(folder, "filler");
      await writeFile(filler, Buffer.alloc(2 ** 20)).catch(() => undefined);

      const file = withNotes(held.file, 40);
      keeper.keep(file);
      expect(await keeper.settle()).toBe(false);
      expect(told[0]).toBe("the disk is full");
      expect(await onDisk(held.path)).toBe(1);
      expect((await readdir(folder)).filter((name) => name.endsWith(".saving"))).toEqual([]);

      await rm(filler);
      keeper.keep(withNotes(file, 1));
      await until(() => told.at(-1) === 42);
      expect(await onDisk(held.path)).toBe(42);
    },
  );

  test.skipIf(!mayMount)(
    "that is full (needs leave to mount one) takes no new case, and keeps no piece of one",
    async () => {
      if (mount("64k").status !== 0) return expect.unreachable("the disk could not be mounted");
      onTestFinished(() => void spawnSync("umount", ["-l", folder]));
      await writeFile(join(folder, "filler"), Buffer.alloc(2 ** 20)).catch(() => undefined);
      expect(await createCase(asked())).toEqual({
        ok: false,
        fault: "the case can't be made: the disk is full.",
      });
      const path = join(folder, "case-20260304-abcdef.json");
      expect(await lockCase(path)).toEqual({
        ok: false,
        fault: "the case can't be locked: the disk is full.",
        mayBeTaken: null,
      });
      expect(await readdir(folder)).toEqual(["filler"]);
    },
  );
});

test("a folder that is taken away is told, and saved to when it is back", async () => {
  const { held, keeper, told } = await keeping();
  await rename(folder, `${folder}-away`);
  keeper.keep(withNotes(held.file, 3));
  expect(await keeper.settle()).toBe(false);
  expect(told[0]).toBe("the folder is gone");
  await rename(`${folder}-away`, folder);
  await until(() => told.at(-1) === 4);
  expect(await onDisk(held.path)).toBe(4);
});

describe.skipIf(process.platform === "win32")("a folder that may not be written to", () => {
  const NOBODY = 65_534;

  /** Goes on as a user whom permissions bind: they bind not the one who runs everything. */
  async function asOrdinaryUser(work: () => Promise<void>): Promise<void> {
    if (process.getuid?.() !== 0) return work();
    for (const path of [
      join(folder, ".."),
      folder,
      ...(await readdir(folder)).map((name) => join(folder, name)),
    ]) {
      await chown(path, NOBODY, NOBODY);
    }
    process.seteuid?.(NOBODY);
    try {
      await work();
    } finally {
      process.seteuid?.(0);
    }
  }

  test("is told while a case is kept, and saved to when it may be again", async () => {
    const { held, keeper, told } = await keeping();
    await asOrdinaryUser(async () => {
      await chmod(folder, 0o500);
      keeper.keep(withNotes(held.file, 3));
      expect(await keeper.settle()).toBe(false);
      expect(told[0]).toBe("the folder may not be written to");
      expect(await onDisk(held.path)).toBe(1);
      await chmod(folder, 0o700);
      await until(() => told.at(-1) === 4);
      expect(await onDisk(held.path)).toBe(4);
    });
  });

  test("takes no new case and lets none be held, but every case can be read", async () => {
    const { held, keeper } = await keeping();
    await keeper.close();
    await held.release();
    await asOrdinaryUser(async () => {
      await chmod(folder, 0o500);
      expect(await createCase(asked())).toMatchObject({
        fault: "the case can't be made: the folder may not be written to.",
      });
      expect(await holdCase(held.path)).toMatchObject({
        fault: "the case can't be locked: the folder may not be written to.",
      });
      expect(await openFolder(join(folder, "deeper"))).toMatchObject({
        fault: "the folder for cases can't be used: the folder may not be written to.",
      });
      expect(await onDisk(held.path)).toBe(1);
      expect(await readdir(folder)).toHaveLength(1);
      await chmod(folder, 0o700);
    });
  });

  test("and a case that may not be read, say so", async () => {
    const { held, keeper } = await keeping();
    await keeper.close();
    await held.release();
    await asOrdinaryUser(async () => {
      await chmod(held.path, 0o000);
      expect(await openCase(held.path)).toEqual({ ok: false, fault: "this user may not read it." });
      expect((await stat(held.path)).size).toBeGreaterThan(0);
    });
  });
});

// The order in which a file reaches the disk, and what is left when it does not.

import { mkdir, readdir, readFile, stat, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { durableWrite, temporaryOf } from "../../src/store/durable-write.ts";
import { simulatedDisk } from "../faults/simulated-disk.ts";
import { failing, recordingDisk } from "./disks.ts";
import { testFolder } from "./test-folder.ts";

const bytes = (text: string) => [Buffer.from(text)];

let folder: string;
let path: string;
beforeEach(async () => {
  ({ folder, path } = await testFolder());
});

describe("a file that is written", () => {
  test("is forced to the disk before it takes its name, and the folder after", async () => {
    const { disk, calls } = recordingDisk();
    await durableWrite("/cases/a.json", bytes("new"), disk);
    expect(calls).toEqual([
      "open a.json.saving wx 600",
      "write a.json.saving",
      "sync a.json.saving",
      "close a.json.saving",
      "rename a.json.saving a.json",
      "open cases r",
      "sync cases",
      "close cases",
    ]);
  });

  test("is whole on a disk that takes a part at a time", async () => {
    const { disk } = simulatedDisk(() => {});
    const parts = ["one ", "", "two", " three"].map((part) => Buffer.from(part));
    await durableWrite("/cases/a.json", parts, disk);
    expect(Buffer.from(await disk.readFile("/cases/a.json")).toString()).toBe("one two three");
  });

  test("belongs to its owner alone and leaves nothing beside it", async () => {
    await durableWrite(path, [Buffer.from("one "), Buffer.from("two")]);
    expect(await readFile(path, "utf8")).toBe("one two");
    expect((await stat(path)).mode & 0o777).toBe(0o600);
    expect(await readdir(folder)).toHaveLength(1);
  });

  test("takes the place of a left-over, and does not follow where it leads", async () => {
    const elsewhere = join(folder, "elsewhere");
    await writeFile(elsewhere, "not ours");
    await symlink(elsewhere, temporaryOf(path));
    await durableWrite(path, bytes("new"));
    expect(await readFile(path, "utf8")).toBe("new");
    expect(await readFile(elsewhere, "utf8")).toBe("not ours");
  });
});

describe("a write that fails", () => {
  test.each(["write", "sync", "close", "rename"])(
    "at the %s leaves the old file and nothing beside it",
    async (call) => {
      await writeFile(path, "old");
      const disk = failing({ call, code: "ENOSPC" });
      await expect(durableWrite(path, bytes("new"), disk)).rejects.toMatchObject({ code: "ENOSPC" });
      expect(await readFile(path, "utf8")).toBe("old");
      expect(await readdir(folder)).toEqual(["case-20260304-abcdef.json"]);
    },
  );

  test("at forcing the folder is not called written", async () => {
    const disk = failing({ call: "sync", on: "cases", code: "EIO" });
    await mkdir(join(folder, "cases"));
    await expect(durableWrite(join(folder, "cases", "a.json"), bytes("new"), disk)).rejects.toMatchObject({
      code: "EIO",
    });
  });
});

test("a folder that cannot be forced by itself is no fault", async () => {
  const { disk } = recordingDisk({ call: "sync", on: "cases", code: "EINVAL" });
  await expect(durableWrite("/cases/a.json", bytes("new"), disk)).resolves.toBeUndefined();
});

describe("a rename that another program holds up", () => {
  test.each(["EPERM", "EACCES", "EBUSY"])("with %s is tried again", async (code) => {
    const disk = failing({ call: "rename", code, times: 3 });
    await durableWrite(path, bytes("new"), disk);
    expect(await readFile(path, "utf8")).toBe("new");
  });

  test("for good is given up", async () => {
    const { disk, calls } = recordingDisk({ call: "rename", code: "EBUSY" });
    await expect(durableWrite("/cases/a.json", bytes("new"), disk)).rejects.toMatchObject({ code: "EBUSY" });
    expect(calls.filter((call) => call.startsWith("rename"))).toHaveLength(6);
    expect(calls.at(-1)).toBe("unlink a.json.saving");
  });
});

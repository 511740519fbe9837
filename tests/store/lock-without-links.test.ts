// Locks on disks that know no second name for a file, such as memory sticks and some shares.

import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import { lockCase } from "../../src/store/lock.ts";
import { scratchFolder } from "./cases.ts";

vi.mock("node:fs/promises", async (original) => ({
  ...(await original<typeof import("node:fs/promises")>()),
  link: () => Promise.reject(Object.assign(new Error("EPERM"), { code: "EPERM" })),
}));

test("a lock is held by one of many there too", async () => {
  const { folder, remove } = await scratchFolder();
  onTestFinished(remove);
  const path = join(folder, "case-20260304-abcdef.json");
  for (let round = 0; round < 10; round++) {
    const outcomes = await Promise.all(Array.from({ length: 8 }, () => lockCase(path)));
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    for (const one of outcomes) if (one.ok) await one.value.release();
    expect(await readdir(folder)).toEqual([]);
  }
});

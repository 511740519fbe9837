// Locks on disks that know no second name for a file, such as memory sticks and some shares.

import { readdir } from "node:fs/promises";
import { expect, test, vi } from "vitest";
import { lockCase } from "../../src/store/lock.ts";
import { testFolder } from "./test-folder.ts";

vi.mock("node:fs/promises", async (original) => ({
  ...(await original<typeof import("node:fs/promises")>()),
  link: () => Promise.reject(Object.assign(new Error("EPERM"), { code: "EPERM" })),
}));

test("a lock is held by one of many there too", async () => {
  const { folder, path } = await testFolder();
  for (let round = 0; round < 10; round++) {
    const outcomes = await Promise.all(Array.from({ length: 8 }, () => lockCase(path)));
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    for (const one of outcomes) if (one.ok) await one.value.release();
    expect(await readdir(folder)).toEqual([]);
  }
});

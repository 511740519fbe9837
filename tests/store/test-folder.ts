// A folder that lives as long as one test.

import { join } from "node:path";
import { onTestFinished } from "vitest";
import { scratchFolder } from "./cases.ts";

/** A new folder, removed when the test ends, and the path of a case in it. */
export async function testFolder(): Promise<{ folder: string; path: string }> {
  const { folder, remove } = await scratchFolder();
  onTestFinished(remove);
  return { folder, path: join(folder, "case-20260304-abcdef.json") };
}

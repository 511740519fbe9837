// A folder of cases that lives as long as one test.

import { onTestFinished } from "vitest";
import { caseFolder } from "./driving.ts";

/** The path of a new folder of cases, removed when the test ends. */
export async function testDir(): Promise<string> {
  const { dir, remove } = await caseFolder();
  onTestFinished(remove);
  return dir;
}

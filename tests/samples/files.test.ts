// The written sample cases: fresh, sound, and chained as the program chains them.

import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { chainFault } from "../../src/store/chain-fault.ts";
import { readCaseFile } from "../../src/store/read-case-file.ts";
import { fileName, sampleFolder, writeSample } from "./samples.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "pumpside-samples-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe.each(INVENTED)("$label", (script) => {
  const kept = join(sampleFolder, fileName(script));

  test("is on the disk as the program would write it now (if not: npm run samples)", async () => {
    await writeSample(script, folder);
    const fresh = readFileSync(join(folder, fileName(script)), "utf8");
    expect(readFileSync(kept, "utf8") === fresh).toBe(true);
  });

  test("reads back without a fault, and its chain holds", async () => {
    const read = await readCaseFile(kept);
    expect(read.ok && chainFault(read.value.file)).toBe(null);
  });
});

test("the folder holds no case but those of the scripts", () => {
  const cases = readdirSync(sampleFolder).filter((name) => name.endsWith(".json"));
  expect(cases.toSorted()).toEqual(INVENTED.map(fileName).toSorted());
});

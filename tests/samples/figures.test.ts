// The figures of the sample cases against tables worked out by hand, at the end and at two moments before it.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { momentOf } from "../../src/commands/invented/play.ts";
import { readRun } from "../../src/figures/run.ts";
import { msOf } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { expectedTables } from "./expected-tables.ts";
import { caseOf, sampleFolder } from "./samples.ts";
import { toldFigures } from "./told-figures.ts";

/** The case as it stood: only what had been written by then. */
const asItStood = (file: CaseFile, ms: number): CaseFile => ({
  ...file,
  entries: file.entries.filter(({ loggedAt }) => msOf(loggedAt) <= ms),
});

for (const script of INVENTED) {
  const tables = expectedTables(readFileSync(join(sampleFolder, `${script.id}.expected.md`), "utf8"));

  describe(script.label, () => {
    test("has hand-made figures for its end and for two moments before it", () => {
      expect(tables).toHaveLength(3);
      expect(tables.at(-1)?.at).toBe(script.steps.at(-1)?.at);
    });

    test.each(tables)("says what the hand-made table says: $heading", ({ at, figures }) => {
      const { ms, offset } = momentOf(script, { at });
      const run = readRun(asItStood(caseOf(script), ms), ms);
      expect(toldFigures(run, offset)).toEqual(figures);
    });
  });
}

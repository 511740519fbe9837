// The audit's page: sound as text, and in a real browser where the machine has one accessible and no wider than its window.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { auditOf } from "../../src/reports/audit.ts";
import { auditHtml } from "../../src/reports/audit-html.ts";
import { caseSummary } from "../../src/reports/case-summary.ts";
import { chromiumPath, openPage } from "../helpers/chromium.ts";
import { manyCase } from "../helpers/many-cases.ts";
import { pageFaults } from "./page-faults.ts";

const audit = auditOf([
  ...Array.from({ length: 200 }, (_, n) => ({ ...caseSummary(manyCase(n)), id: manyCase(n).id })),
  { id: "20260302-broken", fault: `cut short after ${"x".repeat(200)} <b>` },
]);
const page = auditHtml(audit, { since: "2025-12-01" });
const browser = chromiumPath();

test("has no fault that its text alone tells", () => {
  expect(pageFaults(page)).toEqual([]);
});

test.skipIf(browser === null)(
  "fits a telephone and a screen, asks the net for nothing, and has no accessibility fault, light or dark",
  async () => {
    const folder = mkdtempSync(join(tmpdir(), "pumpside-audit-test-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    writeFileSync(join(folder, "audit.html"), page);
    const seen = await openPage(browser as string, join(folder, "audit.html"));
    onTestFinished(() => seen.close());
    for (const width of [360, 1400]) {
      const size = { width, height: 1000, deviceScaleFactor: 1, mobile: false };
      await seen.send("Emulation.setDeviceMetricsOverride", size);
      const over = "document.documentElement.scrollWidth - document.documentElement.clientWidth";
      expect(await seen.evaluate<number>(over)).toBe(0);
    }
    await seen.evaluate(readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8"));
    for (const value of ["light", "dark"]) {
      const features = [{ name: "prefers-color-scheme", value }];
      await seen.send("Emulation.setEmulatedMedia", { media: "screen", features });
      const found = await seen.evaluate<{ id: string; nodes: { html: string }[] }[]>(
        "axe.run(document).then(({ violations }) => violations)",
      );
      expect(found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    }
    expect([seen.asked, seen.faults]).toEqual([[], []]);
  },
  60_000,
);

// The page in a real browser where the machine has one: accessible, no wider than the paper, and silent on the net.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { htmlReport } from "../../src/reports/html.ts";
import { chromiumPath, openPage, type Page } from "../helpers/chromium.ts";
import { caseOf } from "../samples/samples.ts";
import { HOSTILE, hostileCase } from "./hostile.ts";
import { pageFaults } from "./page-faults.ts";
import { reported } from "./report-of.ts";

/** A browser on a busy machine takes its time. */
const PATIENCE = 60_000;

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const browser = chromiumPath();

/** The hostile texts that only a browser can judge: what would run, and what is wide. The others are held as text. */
const WORST = ["a script", "markup that closes what is open", "control characters", "a very long word"];

const invented = INVENTED.map((script) => [script.label, caseOf(script)] as const);
const hostile = HOSTILE.filter(([name]) => WORST.includes(name)).map(
  (one) => [`a case with ${one[0]} in every text`, hostileCase(one)] as const,
);
const cases: readonly (readonly [name: string, file: CaseFile])[] = [...invented, ...hostile];

/** A4 and Letter, upright, without the margins that the page asks for; in pixels of a 96th of an inch. */
const PAPERS = [
  ["A4", 210 - 26, 210, 297],
  ["Letter", 215.9 - 26, 215.9, 279.4],
] as const;
const pixels = (mm: number): number => Math.floor((mm / 25.4) * 96);

type Violation = { id: string; nodes: { html: string; failureSummary: string }[] };

const violations = async (page: Page): Promise<string[]> => {
  const found = await page.evaluate<Violation[]>("axe.run(document).then(({ violations }) => violations)");
  return found.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`);
};

const overflow = (page: Page) =>
  page.evaluate<number>("document.documentElement.scrollWidth - document.documentElement.clientWidth");

const resized = (page: Page, width: number) =>
  page.send("Emulation.setDeviceMetricsOverride", {
    width,
    height: 1000,
    deviceScaleFactor: 1,
    mobile: false,
  });

const coloured = (page: Page, scheme: "light" | "dark", media = "screen") =>
  page.send("Emulation.setEmulatedMedia", {
    media,
    features: [{ name: "prefers-color-scheme", value: scheme }],
  });

if (browser === null)
  test.each(cases)("no browser on this machine: the text alone of the page of %s is checked", (_, file) => {
    expect(pageFaults(htmlReport(reported(file)))).toEqual([]);
  });
else
  describe.each(cases)("the page of %s in a browser", (name, file) => {
    const folder = mkdtempSync(join(tmpdir(), "pumpside-page-test-"));
    let page: Page;
    beforeAll(async () => {
      const path = join(folder, "report.html");
      writeFileSync(path, htmlReport(reported(file)));
      page = await openPage(browser, path);
    }, PATIENCE);
    afterAll(async () => {
      await page?.close();
      rmSync(folder, { recursive: true });
    });

    test("runs nothing and asks the net for nothing", async () => {
      expect([page.asked, page.faults]).toEqual([[], []]);
      expect(await page.evaluate("document.scripts.length")).toBe(0);
    });

    test.each([360, 1400])(
      "is no wider than a window of %i",
      async (width) => {
        await coloured(page, "light");
        await resized(page, width);
        expect(await overflow(page)).toBe(0);
      },
      PATIENCE,
    );

    test.each(PAPERS)(
      "prints on %s with nothing cut off, and light whatever the screen is",
      async (_, room, width, height) => {
        await coloured(page, "dark", "print");
        await resized(page, pixels(room));
        expect(await overflow(page)).toBe(0);
        const colour = "getComputedStyle(document.body).backgroundColor";
        expect(await page.evaluate(colour)).toBe("rgb(255, 255, 255)");
        const { data } = await page.send<{ data: string }>("Page.printToPDF", {
          paperWidth: width / 25.4,
          paperHeight: height / 25.4,
        });
        expect(Buffer.from(data, "base64").subarray(0, 5).toString()).toBe("%PDF-");
      },
      PATIENCE,
    );

    // The engine takes seconds a page; what texts could do to headings and tables is held for all of them without it.
    if (invented.some(([label]) => label === name))
      test(
        "has no accessibility fault, light or dark",
        async () => {
          await resized(page, 1000);
          await page.evaluate(axe);
          for (const scheme of ["light", "dark"] as const) {
            await coloured(page, scheme);
            expect(await violations(page)).toEqual([]);
          }
        },
        PATIENCE,
      );
  });

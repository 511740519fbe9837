// A department's figures: what is counted, what is not, and that it adds up.

import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { indicatorsOf } from "../../src/figures/indicators.ts";
import { readRun } from "../../src/figures/run.ts";
import { auditOf, spreadIn } from "../../src/reports/audit.ts";
import { auditCsv } from "../../src/reports/audit-csv.ts";
import { auditHtml } from "../../src/reports/audit-html.ts";
import { auditText } from "../../src/reports/audit-text.ts";
import { caseSummary, summedUpAt } from "../../src/reports/case-summary.ts";
import { dayIn, type Told } from "../../src/reports/choose-cases.ts";
import { figuresOf } from "../../src/reports/figures.ts";
import { JUDGED, JUDGED_IDS, MANY_FIGURE_NAMES } from "../../src/reports/many-words.ts";
import { quantile, quartilesOf } from "../../src/reports/quartiles.ts";
import { asked } from "../helpers/duckdb.ts";
import { manyCase } from "../helpers/many-cases.ts";
import { typed } from "../helpers/typed-case.ts";

const told = (id: string, lines: readonly string[], more: object = {}): Told => ({
  ...caseSummary(typed(lines)),
  id,
  ...more,
});
const many = Array.from({ length: 40 }, (_, n): Told => {
  const file = manyCase(n);
  return { ...caseSummary(file), id: file.id };
});
const damaged: Told = { id: "20260302-broken", fault: "the file is not JSON, or was cut short." };

describe("quartiles", () => {
  test("of 1, 2, 3, 4 lie at 1.75, 2.5 and 3.25", () => {
    expect(quartilesOf([4, 1, 3, 2])).toEqual({
      lowest: 1,
      lower: 1.75,
      median: 2.5,
      upper: 3.25,
      highest: 4,
    });
  });

  test("of one value are that value, and of none there are none", () => {
    expect(quartilesOf([7])).toEqual({ lowest: 7, lower: 7, median: 7, upper: 7, highest: 7 });
    expect(quartilesOf([])).toBeNull();
    expect(quantile([], 0.5)).toBeNull();
  });

  test("are those of a general analytical engine", async () => {
    const lists = fc.sample(
      fc.array(fc.integer({ min: -5000, max: 50_000 }), { minLength: 1, maxLength: 60 }),
      {
        numRuns: 40,
        seed: 7,
      },
    );
    const rows = lists.map((list) => `[${list}]`).join("), (");
    const judged = await asked(
      `SELECT list_aggregate(l, 'quantile_cont', 0.25), list_aggregate(l, 'quantile_cont', 0.5),
              list_aggregate(l, 'quantile_cont', 0.75) FROM (VALUES (${rows})) AS t(l)`,
    );
    for (const [i, list] of lists.entries()) {
      const { lower, median, upper } = quartilesOf(list) ?? {};
      for (const [j, ours] of [lower, median, upper].entries())
        expect(ours).toBeCloseTo(Number(judged[i]?.[j]), 6);
    }
  });
});

describe("a summary of a case", () => {
  test("has the figures that the report of the case has", () => {
    for (const n of [0, 1, 2]) {
      const file = manyCase(n);
      const { figures } = caseSummary(file);
      const own = new Map(figuresOf(file, summedUpAt(file)).map(({ name, value }) => [name, value]));
      for (const name of MANY_FIGURE_NAMES) if (own.has(name)) expect(figures[name]).toBe(own.get(name));
    }
  });

  test("calls indicators by their own names, and judges all that can be missed", () => {
    const run = readRun(manyCase(0), summedUpAt(manyCase(0)).ms);
    const names = new Map(indicatorsOf(run).map(({ id, name }) => [id, name]));
    expect(JUDGED_IDS.map((id) => names.get(id))).toEqual(JUDGED_IDS.map((id) => JUDGED[id].name));
    const missed = indicatorsOf(run).filter(({ verdict }) => verdict === "met" || verdict === "not met");
    expect(missed.filter(({ id }) => !(id in JUDGED))).toEqual([]);
  });
});

describe("an audit", () => {
  test("takes the middle of what is known, and counts what a case lacks apart", () => {
    const audit = auditOf([
      told("20260304-aaaaaa", ["08:00 b", "09:00 b"]),
      told("20260304-bbbbbb", ["08:00 b", "10:00 b"]),
      told("20260304-cccccc", []),
    ]);
    expect(spreadIn(audit.all, "bypassTime")).toMatchObject({
      known: 2,
      unknown: 1,
      quartiles: { lowest: 3600, median: 5400, highest: 7200 },
    });
    expect(spreadIn(audit.all, "arrestTime")).toMatchObject({ known: 0, unknown: 3, quartiles: null });
  });

  test("has in a rate only cases that could be assessed", () => {
    const audit = auditOf([
      told("20260304-aaaaaa", ["08:00 b", "08:10 a 500", "09:00 b"]),
      told("20260304-bbbbbb", ["08:00 b", "08:10 a 300", "09:00 b"]),
      told("20260304-cccccc", ["08:00 b", "09:00 b"]),
    ]);
    expect(audit.all.rates.act).toEqual({ met: 1, notMet: 1, notAssessable: 1, percent: 50 });
    expect(audit.all.rates.glucose).toEqual({ met: 0, notMet: 0, notAssessable: 3, percent: null });
  });

  test("names damaged cases, and those on bypass still, and leaves them out of the figures", () => {
    const recovered = told("20260304-bbbbbb", ["08:00 b", "09:00 b"], { damage: "recovered in part" });
    const audit = auditOf([told("20260304-aaaaaa", ["08:00 b"]), recovered, damaged, ...many]);
    expect(audit.damaged.map(({ id }) => id)).toEqual([recovered.id, damaged.id]);
    expect(audit.running).toEqual(["20260304-aaaaaa"]);
    expect(audit.all.cases).toBe(many.length);
    for (const text of [auditText(audit, {}), auditHtml(audit, {}), auditCsv(audit)])
      for (const id of [recovered.id, damaged.id, "20260304-aaaaaa"]) expect(text).toContain(id);
  });

  test("has every month from the first case to the last, also one without a case", () => {
    const inMonth = (day: string) =>
      told("20260304-aaaaaa", ["08:00 b", "09:00 b"], { opened: `${day}T08:00:00Z` });
    const { months } = auditOf([inMonth("2025-11-30"), inMonth("2026-02-01")]);
    expect(months.map(({ month, cases }) => [month, cases])).toEqual([
      ["2025-11", 1],
      ["2025-12", 0],
      ["2026-01", 0],
      ["2026-02", 1],
    ]);
  });

  test("adds up: months make the whole, and every case is met, missed or not assessable, known or lacking", () => {
    fc.assert(
      fc.property(fc.subarray([...many, damaged]), (cases) => {
        const { all, months, damaged: broken, running } = auditOf(cases);
        expect(all.cases + broken.length + running.length).toBe(cases.length);
        expect(months.reduce((sum, month) => sum + month.cases, 0)).toBe(all.cases);
        for (const group of [all, ...months]) {
          for (const { known, unknown } of group.figures) expect(known + unknown).toBe(group.cases);
          for (const { met, notMet, notAssessable } of Object.values(group.rates))
            expect(met + notMet + notAssessable).toBe(group.cases);
        }
        for (const id of JUDGED_IDS)
          expect(months.reduce((sum, { rates }) => sum + rates[id].met, 0)).toBe(all.rates[id].met);
      }),
      { numRuns: 30 },
    );
  });

  test("says the same whatever the order of the cases", () => {
    expect(auditOf(many.toReversed()).all).toEqual(auditOf(many).all);
  });

  test("as text fits its page, also without a case", () => {
    for (const cases of [many, [damaged], []]) {
      const widest = Math.max(
        ...auditText(auditOf(cases), {})
          .split("\n")
          .map((line) => line.length),
      );
      expect(widest).toBeLessThanOrEqual(78);
    }
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what it must be made of
    expect(auditText(auditOf(many), {}, true)).toMatch(/^[\x00-\x7f]*$/);
  });

  test("as a table gives back its medians and rates", () => {
    const audit = auditOf(many);
    const rows: Record<string, string>[] = parse(auditCsv(audit), { columns: true });
    const row = (name: string) => rows.find((one) => one.name === name && one.month === "");
    expect(Number(row("bypassTime")?.median)).toBe(spreadIn(audit.all, "bypassTime").quartiles?.median);
    expect(Number(row("glucose")?.["rate (%)"])).toBe(audit.all.rates.glucose.percent);
    expect(rows).toHaveLength((1 + audit.months.length) * (MANY_FIGURE_NAMES.length + JUDGED_IDS.length));
  });

  test("as a page has a chart and a table for each indicator, and nothing that runs", () => {
    const page = auditHtml(auditOf(many), { since: "2026-01-01" });
    expect(page.match(/<svg /g)).toHaveLength(2 + JUDGED_IDS.length);
    expect(page.match(/<figure>/g)).toHaveLength(2 + JUDGED_IDS.length);
    expect(page).not.toMatch(/<script|javascript:|https?:/i);
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
    expect(auditHtml(auditOf([]), {})).not.toMatch(/NaN|undefined|Infinity/);
  });

  test("carries no text of anybody's into the page as markup", () => {
    const hostile: Told = { id: "20260302-broken", fault: "<img src=x onerror=alert(1)>\u001b[31m" };
    expect(auditHtml(auditOf([hostile]), {})).not.toContain("<img");
    expect(auditText(auditOf([hostile]), {})).not.toContain("\u001b");
    expect(dayIn(hostile)).toBe("2026-03-02");
  });
});

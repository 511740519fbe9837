// Many cases for an analytical engine: what a general one reads out of the export is what an audit says.

import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { auditOf, spreadIn } from "../../src/reports/audit.ts";
import { caseSummary } from "../../src/reports/case-summary.ts";
import { exportRows } from "../../src/reports/export-lines.ts";
import { asked } from "../helpers/duckdb.ts";
import { manyCase, writeCutShort, writeMany } from "../helpers/many-cases.ts";
import { typed } from "../helpers/typed-case.ts";
import { called } from "../helpers/verb.ts";
import { scratchFolder } from "../store/cases.ts";

const MANY = 45;
let place: Awaited<ReturnType<typeof scratchFolder>>;
let folder: string;
beforeAll(async () => {
  place = await scratchFolder();
  folder = place.folder;
  await writeMany(folder, MANY);
});
afterAll(() => place.remove());

const files = Array.from({ length: MANY }, (_, n) => manyCase(n));
const audit = auditOf(files.map((file) => ({ ...caseSummary(file), id: file.id })));

async function exportedTo(name: string, ...words: string[]): Promise<string> {
  const out = join(folder, name);
  expect(await called("export", folder, "--out", out, ...words)).toMatchObject({ code: 0, complaint: "" });
  return out;
}

describe("a general analytical engine", () => {
  test("runs the query of the developers' page, and finds the audit's own numbers", async () => {
    const out = await exportedTo("figures-all.ndjson", "--what", "figures");
    const page = await readFile("DEVELOPERS.md", "utf8");
    const query = /```sql\n([\s\S]*?)```/.exec(page)?.[1] ?? "";
    const rows = await asked(query.replace("figures*.ndjson", out));
    expect(rows.map(([month]) => month)).toEqual(audit.months.map(({ month }) => month));
    for (const [i, month] of audit.months.entries()) {
      const [, runs, bypass, delivery, met, assessed] = rows[i] ?? [];
      const bypassTime = spreadIn(month, "bypassTime");
      expect(runs).toBe(bypassTime.known);
      expect(Number(bypass) * 60).toBeCloseTo(bypassTime.quartiles?.median ?? Number.NaN, 6);
      expect(Number(delivery)).toBeCloseTo(spreadIn(month, "deliveryLowest").quartiles?.median ?? 0, 6);
      expect([met, assessed]).toEqual([
        month.rates.glucose.met,
        month.rates.glucose.met + month.rates.glucose.notMet,
      ]);
    }
  });

  test("finds every entry of every case once", async () => {
    const out = await exportedTo("entries.ndjson");
    const rows = await asked(
      `SELECT "case", count(*), count(DISTINCT entry), count(*) FILTER (stands = 'struck out')
       FROM read_ndjson('${out}', columns = {"case": 'VARCHAR', entry: 'INTEGER', stands: 'VARCHAR', "values": 'JSON'})
       GROUP BY "case" ORDER BY "case"`,
    );
    const expected = files.map(({ id, entries }) => {
      const struck = entries.filter(({ kind }) => kind === "void").length;
      return [id, entries.length, entries.length, struck];
    });
    expect(rows).toEqual(expected.toSorted(([a], [b]) => String(a).localeCompare(String(b))));
  });
});

describe("an entry's line", () => {
  const lines = [
    "08:00 b",
    "08:05 x",
    "08:06 d 300",
    "08:20 x",
    "08:30 b",
    "08:40 b",
    "08:50 b",
    "09:00 z #4 350",
  ];
  const rows = exportRows(typed(lines), "entries") as Record<string, unknown>[];

  test("says where in the run it lies", () => {
    expect(rows.map(({ phase }) => phase)).toEqual([
      ...["before", "on bypass", "arrested", "arrested", "on bypass"],
      ...["between", "on bypass", "after", "after"],
    ]);
  });

  test("has the value that stands now, and says that it was put right", () => {
    expect(rows[3]).toMatchObject({ kind: "dose", stands: "put right", corrections: 1, values: { ml: 350 } });
    expect(rows[2]).toMatchObject({ stands: "as written", corrections: 0 });
  });
});

test("every line of a kind has the same fields, and what is not known is null", () => {
  for (const what of ["entries", "figures"] as const) {
    const rows = files.slice(0, 3).flatMap((file) => exportRows(file, what));
    expect(new Set(rows.map((row) => Object.keys(row).join())).size).toBe(1);
  }
  expect(exportRows(typed([]), "figures")).toContainEqual(
    expect.objectContaining({ figure: "bypassTime", value: null, working: "never on" }),
  );
});

test("without names says nothing of who it was", async () => {
  const out = await exportedTo("nameless.ndjson", "--without-names");
  const text = await readFile(out, "utf8");
  expect(text).not.toMatch(/"by":"(KM|TJ|AN)"/);
  expect(text).not.toContain("V-0147");
});

test("names a damaged case and exports the others", async () => {
  const other = await scratchFolder();
  await writeMany(other.folder, 2);
  await writeCutShort(other.folder, "20260101-broken");
  await writeFile(join(other.folder, "settings.json"), "{}");
  const { code, out, complaint } = await called("export", other.folder, "--what", "figures");
  expect(code).toBe(1);
  expect(complaint).toContain("20260101-broken");
  expect(complaint).not.toContain("settings");
  expect(
    new Set(
      out
        .trim()
        .split("\n")
        .map((line) => JSON.parse(line).case),
    ).size,
  ).toBe(2);
  await other.remove();
});

test("never takes the place of a file unless it is told to", async () => {
  const out = join(folder, "mine.txt");
  await writeFile(out, "mine");
  const refused = await called("export", folder, "--out", out);
  expect(refused.code).toBe(1);
  expect(await readFile(out, "utf8")).toBe("mine");
  await called("export", folder, "--out", out, "--force");
  expect(await readFile(out, "utf8")).toMatch(/^\{"case"/);
});

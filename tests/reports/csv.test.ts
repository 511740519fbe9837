// The tables: read back by a general reader they say the same, and no spreadsheet calculates what somebody typed.

import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { GAS_VALUES, READINGS } from "../../src/record/quantities.ts";
import { csvText } from "../../src/reports/csv.ts";
import { csvTable } from "../../src/reports/csv-tables.ts";
import { figuresOf } from "../../src/reports/figures.ts";
import { CSV_TABLES, type CsvTableName } from "../../src/reports/formats.ts";
import { typed } from "../helpers/typed-case.ts";
import { ucum } from "../helpers/ucum.ts";
import { caseOf } from "../samples/samples.ts";
import { HOSTILE, hostileCase } from "./hostile.ts";
import { reported } from "./report-of.ts";

type Row = { [column: string]: string };

const written = (file: CaseFile, name: CsvTableName) => csvText(csvTable(reported(file), name));
const readBack = (text: string): Row[] => parse(text, { columns: true, record_delimiter: "\r\n" });
const rowsOf = (file: CaseFile, name: CsvTableName) => readBack(written(file, name));

describe.each(INVENTED)("the tables of $label", (script) => {
  const file = caseOf(script);

  test("give the same figures when a general reader reads them", () => {
    const report = reported(file);
    const figures = figuresOf(file, report.at);
    const rows = rowsOf(file, "figures");
    expect(rows.map(({ figure, value }) => [figure, value === "" ? null : Number(value)])).toEqual(
      figures.map(({ name, value }) => [name, value]),
    );
    expect(rows.map((row) => row["unit of the value (UCUM)"])).toEqual(figures.map(({ unit }) => unit));
  });

  test("give every entry in the order of writing", () => {
    const rows = rowsOf(file, "entries");
    expect(rows.map(({ number, kind }) => [Number(number), kind])).toEqual(
      file.entries.map(({ seq, kind }) => [seq, kind]),
    );
  });

  test("give every value that was measured, a column a quantity", () => {
    const rows = rowsOf(file, "readings");
    const readings = file.entries.flatMap((entry) =>
      entry.kind === "readings" || entry.kind === "gas" ? Object.values(entry.values) : [],
    );
    const acts = file.entries.flatMap((entry) => (entry.kind === "act" ? [entry.seconds] : []));
    const cells = rows.flatMap((row) =>
      Object.entries(row)
        .slice(6)
        .map(([, cell]) => cell),
    );
    const numbers = cells.filter((cell) => cell !== "").map(Number);
    expect(numbers.toSorted((a, b) => a - b)).toEqual(
      [...readings, ...acts].map(Number).toSorted((a, b) => a - b),
    );
  });
});

test("a column names its quantity and its unit, which is UCUM", () => {
  const [header = ""] = written(typed([]), "readings").split("\r\n");
  const [columns = []] = parse(header) as string[][];
  const quantities = [...Object.values(READINGS), ...Object.values(GAS_VALUES)];
  expect(columns).toEqual(expect.arrayContaining(["pump flow (L/min)", "sample: pH ([pH])", "ACT (s)"]));
  expect(columns.length).toBe(6 + quantities.length + 1);
  for (const column of columns.slice(6)) {
    const unit = /\((.*)\)$/.exec(column)?.[1] ?? "";
    expect([column, ucum.validateUnitString(unit).status]).toEqual([column, "valid"]);
  }
});

test("every row has as many cells as the header, and ends with a carriage return and a line feed", () => {
  for (const name of CSV_TABLES) {
    const text = written(caseOf(INVENTED[0] as (typeof INVENTED)[number]), name);
    expect(text.endsWith("\r\n")).toBe(true);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    const rows = parse(text) as string[][];
    expect(new Set(rows.map(({ length }) => length)).size).toBe(1);
  }
});

test("an entry put right, and one struck out, are told as they stand, with the correction beside them", () => {
  const rows = rowsOf(typed(["09:06 d 300", "09:20 z 350", "09:30 u 80", "09:31 z ! wrong bag"]), "entries");
  expect(rows.map((row) => [row.kind, row["volume (mL)"], row.stands, row.corrects])).toEqual([
    ["opened", "", "as written", ""],
    ["dose", "350", "put right", ""],
    ["amend", "", "as written", "2"],
    ["volume", "80", "struck out", ""],
    ["void", "", "as written", "4"],
  ]);
});

test("a figure that is not known is an empty cell, and says what it lacks", () => {
  const urine = rowsOf(typed([]), "figures").find(({ figure }) => figure === "urine");
  expect([urine?.value, urine?.from]).toEqual(["", "no urine recorded"]);
});

test("a negative number stays a number", () => {
  expect(csvText({ name: "t", columns: ["a"], rows: [[-1.5], [null], [0]] })).toBe("a\r\n-1.5\r\n\r\n0\r\n");
});

/** What a spreadsheet takes for a formula: the first sign, after spaces and what it strips from the front. */
const FORMULA = /^[\s\p{Cf}]*[=+\-@＝＋－＠]/u;

test.each(HOSTILE)("%s in every text is no formula in any cell, and shifts no cell", (...hostile) => {
  const file = hostileCase(hostile);
  for (const name of CSV_TABLES) {
    const text = written(file, name);
    const rows = parse(text) as string[][];
    expect(new Set(rows.map(({ length }) => length)).size).toBe(1);
    const isNumber = (cell: string) => cell !== "" && Number.isFinite(Number(cell));
    expect(rows.flat().filter((cell) => FORMULA.test(cell) && !isNumber(cell))).toEqual([]);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
  }
});

test("any text reads back as it was, on one line; a sign before a formula is the only thing added", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const [, [cell = ""] = []] = parse(
        csvText({ name: "t", columns: ["a"], rows: [[`x${text}`]] }),
      ) as string[][];
      expect(cell).not.toMatch(/[\p{Cc}\p{Cf}]/u);
      const [, [guarded = ""] = []] = parse(
        csvText({ name: "t", columns: ["a"], rows: [[`=${text}`]] }),
      ) as string[][];
      expect(guarded.startsWith("'=")).toBe(true);
      expect(guarded.slice(2).trimEnd()).toBe(cell.slice(1).trimEnd());
    }),
  );
});

/** A table as comma-separated values (RFC 4180), harmless in a spreadsheet. */
import { harmless } from "../format/text.ts";

export type Cell = string | number | null;

export type CsvTable = {
  /** The name of its file, without the ending. */
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
};

/** Header and rows, each ended by CR LF. What is not known is an empty cell. */
export const csvText = ({ columns, rows }: CsvTable): string =>
  [columns, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");

// A spreadsheet takes a cell for a formula by its first character, the wide forms of East Asian keyboards among them.
const FORMULA = /^['=+\-@＝＋－＠]/;
const QUOTED = /[",\r\n]/;

/** Numbers as they are; text on one line, with an apostrophe before whatever a spreadsheet would calculate. */
function cell(value: Cell): string {
  if (value === null) return "";
  if (typeof value === "number") return Number.isFinite(value) ? String(value) : "";
  const text = harmless(value);
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return QUOTED.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

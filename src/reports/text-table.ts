/** A table as lines of text that fit a page, its columns folded where they must be. */
import { harmless } from "../format/text.ts";
import type { Head, Row, Table } from "./blocks.ts";
import { filledTo, foldedTo, widthOf } from "./text-fold.ts";

/** Lines that stay on one page; `heads` stand above them again where a page begins with them. */
export type Chunk = { readonly lines: readonly string[]; readonly heads: readonly string[] };

const GAP = "  ";
const NARROWEST = 8;
/** What a row that belongs to the one before it is marked with. */
const BENEATH = "^";

/** A table in lines no wider than `width`, in chunks that a page break may come between. */
export function tableChunks(table: Table, width: number): Chunk[] {
  const parts = table.isWide ? partsOf(table, width) : [withoutAsides(table)];
  return parts.flatMap((part) => chunksOf(part, width));
}

/** What is said aside goes into the cell before it, in brackets. */
function withoutAsides(table: Table): Table {
  const { heads, rows } = table;
  const kept = [...heads.keys()].filter((i) => !heads[i]?.isAside);
  const cellAt = (cells: readonly string[], i: number) => {
    const aside = heads[i + 1]?.isAside && cells[i + 1] ? `[${cells[i + 1]}]` : "";
    return [cells[i] ?? "", aside].filter(Boolean).join(" ");
  };
  return {
    ...table,
    heads: kept.map((i) => heads[i] as Head),
    rows: rows.map((row) => ({ ...row, cells: kept.map((i) => cellAt(row.cells, i)) })),
  };
}

function chunksOf({ caption, heads, rows, empty }: Table, width: number): Chunk[] {
  const title = foldedTo(caption, width);
  if (rows.length === 0)
    return [chunk([...title, ...foldedTo(empty, width - 2).map((line) => `  ${line}`), ""])];
  const widths = widthsFor(heads, rows, width);
  const line = (cells: readonly string[]) => rowLines(cells, heads, widths);
  const ruled = [...line(heads.map(({ text }) => text)), widths.map((n) => "-".repeat(n)).join(GAP)];
  const [first, ...others] = rows.map((row) => line(marked(row)));
  return [
    chunk([...title, ...ruled, ...(first ?? [])]),
    ...others.map((lines) => chunk(lines, [...title, ...ruled])),
    chunk([""]),
  ];
}

/** Lines that stay together, with the heads to say again on the next page. */
export const chunk = (lines: readonly string[], heads: readonly string[] = []): Chunk => ({ lines, heads });

const marked = ({ cells: [first = "", ...rest], sort }: Row): string[] =>
  sort === "beneath" ? [`${BENEATH}${first}`, ...rest] : [first, ...rest];

/** As wide as the cells ask for; where that is too much, the widest columns of words give way. */
function widthsFor(heads: readonly Head[], rows: readonly Row[], width: number): number[] {
  const all = [heads.map(({ text }) => text), ...rows.map(marked)];
  const widths = heads.map((_, i) => Math.max(1, ...all.map((cells) => widthOf(harmless(cells[i] ?? "")))));
  const room = width - GAP.length * (heads.length - 1);
  let over = widths.reduce((sum, n) => sum + n, 0) - room;
  while (over > 0) {
    const widest = indexOfWidest(widths, heads);
    if ((widths[widest] ?? 0) <= NARROWEST) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
    over -= 1;
  }
  return widths;
}

function indexOfWidest(widths: readonly number[], heads: readonly Head[]): number {
  const words = widths.map((n, i) => (heads[i]?.isNumber && n <= 3 * NARROWEST ? 0 : n));
  return words.indexOf(Math.max(...words));
}

function rowLines(cells: readonly string[], heads: readonly Head[], widths: readonly number[]): string[] {
  const folded = widths.map((n, i) => foldedTo(cells[i] ?? "", n));
  const height = Math.max(...folded.map((lines) => lines.length));
  return Array.from({ length: height }, (_, row) =>
    folded
      .map((lines, i) => filledTo(lines[row] ?? "", widths[i] ?? 0, heads[i]?.isNumber))
      .join(GAP)
      .trimEnd(),
  );
}

/** A wide table as several below each other, each with the first column and as many others as fit. */
function partsOf(table: Table, width: number): Table[] {
  const { heads, rows } = table;
  if (rows.length === 0) return [table];
  const widths = heads.map(({ text }, i) =>
    Math.max(widthOf(text), ...rows.map(({ cells }) => widthOf(harmless(cells[i] ?? "")))),
  );
  const parts: number[][] = [[]];
  let room = width - (widths[0] ?? 0);
  for (const i of heads.keys()) {
    if (i === 0) continue;
    const needed = (widths[i] ?? 0) + GAP.length;
    if (needed > room && parts.at(-1)?.length) {
      parts.push([]);
      room = width - (widths[0] ?? 0);
    }
    parts.at(-1)?.push(i);
    room -= needed;
  }
  return parts.map((columns, i) => ({
    ...table,
    caption: i === 0 ? table.caption : `${table.caption}, continued`,
    heads: [0, ...columns].map((column) => heads[column] as Head),
    rows: rows.map((row) => ({ ...row, cells: [0, ...columns].map((column) => row.cells[column] ?? "") })),
  }));
}

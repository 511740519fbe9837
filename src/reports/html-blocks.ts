/** The blocks of a section as markup: tables with headed columns and rows, pairs, lines, and room to sign. */
import { UNKNOWN } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import type { Block, Head, Row, Section, Table } from "./blocks.ts";
import { html, type Markup } from "./html-parts.ts";

/** A section with its anchor and its heading. */
export const sectionMarkup = ({ id, title, blocks }: Section): Markup =>
  html`<section id="${id}"><h2>${title}</h2>${blocks.map(blockMarkup)}</section>`;

function blockMarkup(block: Block): Markup {
  switch (block.kind) {
    case "table":
      return block.rows.length === 0
        ? html`<p class="none"><strong>${block.caption}:</strong> ${block.empty}</p>`
        : html`${partsOf(withoutEmptyAsides(block)).map(tableMarkup)}`;
    case "pairs":
      return html`<dl>${block.pairs.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl>`;
    case "lines":
      return html`${block.lines.map((line) => html`<p>${line}</p>`)}`;
    case "signatures":
      return html`<ul class="signatures">${block.people.map((who) => html`<li><span class="rule"></span>${who}</li>`)}</ul>`;
    default:
      return block satisfies never;
  }
}

/** Tables of no more rows stay on one page. */
const SHORT = 14;

/** The first cell of a row is its head. */
export const tableMarkup = ({ caption, heads, rows }: Table): Markup =>
  html`<table${rows.length <= SHORT && html` class="short"`}><caption>${caption}</caption><thead><tr>${heads.map(headMarkup)}</tr></thead><tbody>${rows.map(
    (row) => rowMarkup(row, heads),
  )}</tbody></table>`;

const headMarkup = ({ text, isNumber }: Head): Markup =>
  html`<th scope="col"${isNumber && html` class="number"`}>${text}</th>`;

function rowMarkup({ cells, sort }: Row, heads: readonly Head[]): Markup {
  const [first = "", ...others] = cells;
  const name = harmless(first) || UNKNOWN;
  return html`<tr${sort && html` class="${sort}"`}><th scope="row"${classOf(name, heads[0])}>${name}</th>${others.map(
    (cell, i) => html`<td${classOf(cell, heads[i + 1])}>${cell}</td>`,
  )}</tr>`;
}

/** Words of more signs than this are broken where the column ends. */
const LONG_WORD = /\S{25}/;

function classOf(cell: string, head: Head | undefined): Markup | undefined {
  const classes = [head?.isNumber ? "number" : "", LONG_WORD.test(cell) ? "long" : ""].filter(Boolean);
  return classes.length > 0 ? html` class="${classes.join(" ")}"` : undefined;
}

/** A column that is said aside is left out where there is nothing in it. */
function withoutEmptyAsides(table: Table): Table {
  const { heads, rows } = table;
  const kept = [...heads.keys()].filter((i) => !heads[i]?.isAside || rows.some(({ cells }) => cells[i]));
  return {
    ...table,
    heads: kept.map((i) => heads[i] as Head),
    rows: rows.map((row) => ({ ...row, cells: kept.map((i) => row.cells[i] ?? "") })),
  };
}

/** Columns after the first that an upright page has room for. */
const MOST_COLUMNS = 9;

function partsOf(table: Table): Table[] {
  if (!table.isWide || table.heads.length <= MOST_COLUMNS + 1) return [table];
  const parts = Math.ceil((table.heads.length - 1) / MOST_COLUMNS);
  return Array.from({ length: parts }, (_, part) => {
    const from = 1 + part * MOST_COLUMNS;
    const pick = <T>(list: readonly T[]): T[] => [list[0] as T, ...list.slice(from, from + MOST_COLUMNS)];
    return {
      ...table,
      caption: part === 0 ? table.caption : `${table.caption}, continued`,
      heads: pick(table.heads),
      rows: table.rows.map((row) => ({ ...row, cells: pick(row.cells) })),
    };
  });
}

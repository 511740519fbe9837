/** What a report is made of before it is text or a page: sections of tables, pairs and lines. */

/** How a row is set apart: a sum, what was struck out, or what was said of the row before it. */
type RowSort = "total" | "struck" | "beneath" | "alert";

export type Row = { readonly cells: readonly string[]; readonly sort?: RowSort };

export type Head = {
  readonly text: string;
  /** Numbers stand to the right. */
  readonly isNumber?: boolean;
  /** Said beside the column before it, where there is no room for a column of its own. */
  readonly isAside?: boolean;
};

export type Table = {
  readonly kind: "table";
  readonly caption: string;
  readonly heads: readonly Head[];
  readonly rows: readonly Row[];
  /** What to say where there is no row. */
  readonly empty: string;
  /** Whether its columns after the first are too many for a page, and go on in a table below. */
  readonly isWide?: boolean;
};

export type Pairs = {
  readonly kind: "pairs";
  readonly pairs: readonly (readonly [name: string, value: string])[];
};
export type Lines = { readonly kind: "lines"; readonly lines: readonly string[] };

/** Room for a name written by hand, one for each person. */
export type Signatures = { readonly kind: "signatures"; readonly people: readonly string[] };

export type Block = Table | Pairs | Lines | Signatures;

export type Section = {
  /** Its anchor on a page. */
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
};

/** Heads by their texts: `>` begins one of numbers, `~` one that is said beside the column before it. */
export const heads = (...texts: readonly string[]): Head[] =>
  texts.map((text) => {
    if (text.startsWith(">")) return { text: text.slice(1), isNumber: true };
    return text.startsWith("~") ? { text: text.slice(1), isAside: true } : { text };
  });

/** A table from its heads, as `heads` reads them, and its rows; `empty` is said where there is none. */
export const table = (
  caption: string,
  columns: readonly string[],
  rows: readonly (Row | readonly string[])[],
  empty: string,
): Table => ({
  kind: "table",
  caption,
  heads: heads(...columns),
  rows: rows.map((row) => ("cells" in row ? row : { cells: row })),
  empty,
});

/** Names with their values, one a line. */
export const pairs = (...all: readonly (readonly [string, string])[]): Pairs => ({
  kind: "pairs",
  pairs: all,
});
/** Sentences, one a line. */
export const lines = (...all: readonly string[]): Lines => ({ kind: "lines", lines: all });

/** Blocks of rows laid out in columns, as in a newspaper: a page is as many columns as stand beside each other. */

export type Block = { readonly title: string; readonly rows: readonly string[] };

const NAME = 16;

/** A row with its name in a column of its own. */
export const named = (name: string, value: string): string => `${name.padEnd(NAME)} ${value}`;

export type Row = { readonly text: string; readonly isTitle: boolean };

/** A page: its columns from left to right, each a list of rows. */
export type Page = readonly (readonly Row[])[];

/**
 * The blocks in columns of `height` rows, `across` of them a page. A block that is torn says its title again; no title
 * stands alone at the foot of a column.
 */
export function flowed(blocks: readonly Block[], across: number, height: number): readonly Page[] {
  const columns: Row[][] = [[]];
  const last = () => columns.at(-1) as Row[];
  for (const { title, rows } of blocks) {
    if (last().length > 0 && last().length + 2 > height) columns.push([]);
    last().push({ text: title, isTitle: true });
    for (const text of rows) {
      if (last().length >= height) columns.push([{ text: `${title}, more`, isTitle: true }]);
      last().push({ text, isTitle: false });
    }
  }
  return Array.from({ length: Math.ceil(columns.length / across) }, (_, page) =>
    columns.slice(page * across, (page + 1) * across),
  );
}

/** Of pages that are turned round and round, the one that many turns lead to. */
export const pageAt = <P>(pages: readonly P[], turned: number): P =>
  pages[placeAfter(pages.length, turned)] as P;

export const placeAfter = (count: number, turned: number): number =>
  count === 0 ? 0 : ((turned % count) + count) % count;

/** How much room there is, and what is shown in it. */

export const LEAST = { columns: 80, rows: 24 };
/** Room for three clocks in big digits and an ACT beside them. */
const LARGE = { columns: 112, rows: 34 };

export type Size = { readonly columns: number; readonly rows: number };

/** `small`: timers, entry line and a sentence. `usual`: everything. `large`: digits that read from two metres. */
export type Room = "small" | "usual" | "large";

export function roomFor({ columns, rows }: Size): Room {
  if (columns < LEAST.columns || rows < LEAST.rows) return "small";
  return rows >= LARGE.rows && columns >= LARGE.columns ? "large" : "usual";
}

/** Rows that Ink may draw: one less than there are, so that it never has to clear the whole screen. */
export const drawnRows = ({ rows }: Size): number => Math.max(1, rows - 1);

// Reads the hand-made tables beside the sample cases: for each moment, every figure and its value.

export type Expected = {
  /** The heading, for the name of the test. */
  readonly heading: string;
  /** The wall clock at the moment, `10:40:00`. */
  readonly at: string;
  /** Figure and value, in the order of the table. */
  readonly figures: readonly (readonly [string, string])[];
};

/** The tables of a file of expected figures, one for each heading that ends in a time. */
export function expectedTables(markdown: string): Expected[] {
  return markdown.split(/^## /m).flatMap((section) => {
    const [heading = "", ...lines] = section.split("\n");
    const at = /\d\d:\d\d:\d\d$/.exec(heading)?.[0];
    return at === undefined ? [] : [{ heading, at, figures: rowsOf(lines) }];
  });
}

const rowsOf = (lines: readonly string[]): [string, string][] => {
  const rows = lines.filter((line) => line.startsWith("| ")).map(cellsOf);
  const [, , ...figures] = rows;
  return figures.map(([figure = "", , value = ""]) => [figure, value]);
};

const cellsOf = (line: string): string[] =>
  line
    .split("|")
    .slice(1, -1)
    .map((cell) => cell.trim());

/** Rows of plain text, for a terminal that is too small for anything else. */
import { Box, Text } from "ink";
import { cutTo } from "./fit.ts";
import { drawnRows, LEAST, type Size } from "./size.ts";
import { wrapped } from "./wrapped.ts";

type Props = {
  /** Sentences that wrap. */
  readonly lines: readonly string[];
  /** What stands below them, a row each. */
  readonly list?: readonly string[] | undefined;
  readonly size: Size;
};

/** The first rows that fit. */
export function PlainRows({ lines, list = [], size }: Props) {
  const rows = drawnRows(size);
  const width = Math.max(1, size.columns - 1);
  const shown = [...lines.flatMap((line) => wrapped(line, width)), ...list].slice(0, rows);
  return (
    <Box flexDirection="column" height={rows}>
      {shown.map((line, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their place.
        <Text key={place} wrap="truncate">
          {cutTo(line, width) || " "}
        </Text>
      ))}
    </Box>
  );
}

/** What a person may do about it. */
export const tooSmall = ({ columns, rows }: Size): string =>
  `This terminal is ${columns}×${rows}; the console needs ${LEAST.columns}×${LEAST.rows}. Keys still work.`;

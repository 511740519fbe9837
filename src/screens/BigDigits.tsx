/** Digits five rows tall, to be read from two metres. */
import { Box, Text } from "ink";

const GLYPHS: Readonly<Record<string, readonly string[]>> = {
  "0": ["████", "█  █", "█  █", "█  █", "████"],
  "1": ["  █ ", " ██ ", "  █ ", "  █ ", " ███"],
  "2": ["████", "   █", "████", "█   ", "████"],
  "3": ["████", "   █", " ███", "   █", "████"],
  "4": ["█  █", "█  █", "████", "   █", "   █"],
  "5": ["████", "█   ", "████", "   █", "████"],
  "6": ["████", "█   ", "████", "█  █", "████"],
  "7": ["████", "   █", "  █ ", " █  ", " █  "],
  "8": ["████", "█  █", "████", "█  █", "████"],
  "9": ["████", "█  █", "████", "   █", "████"],
  ":": [" ", "█", " ", "█", " "],
  "–": ["    ", "    ", "████", "    ", "    "],
};

const ROWS = [0, 1, 2, 3, 4] as const;

/** The rows of a text of digits, colons and dashes; anything else is left out. */
const bigRows = (text: string): string[] =>
  ROWS.map((row) => [...text].flatMap((char) => GLYPHS[char]?.[row] ?? []).join(" "));

export function BigDigits({ text, bold = false }: { text: string; bold?: boolean }) {
  return (
    <Box flexDirection="column" aria-label={text}>
      {bigRows(text).map((row, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows of a digit never change places.
        <Text key={place} bold={bold} wrap="truncate" aria-hidden>
          {row === "" ? " " : row}
        </Text>
      ))}
    </Box>
  );
}

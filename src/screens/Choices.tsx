/** The letters an open line takes, in columns. */
import { Box, Text } from "ink";
import { column } from "./fit.ts";

type Choice = readonly [letter: string, name: string];

type Layout = { readonly across: number; readonly rows: number; readonly wide: number };

const WIDTH = 26;
const LEAST_WIDTH = 18;

/** Wide columns where they fit into `most` rows, else as many narrower ones as it takes. */
function layoutOf(choices: readonly Choice[], columns: number, most: number): Layout {
  const wanted = Math.ceil(choices.length / Math.max(1, most));
  const widest = Math.max(1, Math.floor(columns / WIDTH));
  const across = Math.max(widest, Math.min(wanted, Math.floor(columns / LEAST_WIDTH)));
  const rows = Math.min(Math.max(0, most), Math.ceil(choices.length / across));
  return { across, rows, wide: Math.floor(columns / across) };
}

export const choiceRows = (choices: readonly Choice[], columns: number, most: number): number =>
  layoutOf(choices, columns, most).rows;

type Props = { readonly choices: readonly Choice[]; readonly columns: number; readonly most: number };

/** In at most `most` rows; where not all fit, the last cell says how many more there are. */
export function Choices({ choices, columns, most }: Props) {
  const { across, rows, wide } = layoutOf(choices, columns, most);
  const cells = across * rows;
  const shown: readonly Choice[] =
    choices.length <= cells
      ? choices
      : [...choices.slice(0, cells - 1), ["…", `${choices.length - cells + 1} more`]];
  const lines = Array.from({ length: rows }, (_, row) =>
    shown.filter((_choice, place) => place % rows === row),
  );
  return (
    <Box flexDirection="column" height={rows}>
      {lines.map((line) => (
        <Text key={line[0]?.[1]} wrap="truncate">
          {line.map(([letter, name]) => (
            <Text key={name}>
              <Text bold color="cyan">{` ${letter} `}</Text>
              {column(name, wide - letter.length - 3)}{" "}
            </Text>
          ))}
        </Text>
      ))}
    </Box>
  );
}

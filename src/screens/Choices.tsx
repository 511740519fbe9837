/** The letters an open line takes, in columns. */
import { Box, Text } from "ink";
import { column } from "./fit.ts";

type Choice = readonly [letter: string, name: string];

const WIDTH = 26;

export const choiceRows = (choices: readonly Choice[], columns: number): number =>
  Math.ceil(choices.length / Math.max(1, Math.floor(columns / WIDTH)));

export function Choices({ choices, columns }: { choices: readonly Choice[]; columns: number }) {
  const rows = choiceRows(choices, columns);
  const lines = Array.from({ length: rows }, (_, row) =>
    choices.filter((_choice, place) => place % rows === row),
  );
  return (
    <Box flexDirection="column" height={rows}>
      {lines.map((line) => (
        <Text key={line[0]?.[1]} wrap="truncate">
          {line.map(([letter, name]) => (
            <Text key={name}>
              <Text bold color="cyan">{` ${letter} `}</Text>
              {column(name, WIDTH - letter.length - 3)}{" "}
            </Text>
          ))}
        </Text>
      ))}
    </Box>
  );
}

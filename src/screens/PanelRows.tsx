/** Rows of a panel: plain lines, or figures with their working. */
import { Box, Text } from "ink";
import { type Figure, figureText } from "../figures/figure.ts";
import type { Run } from "../figures/run.ts";
import { column } from "./fit.ts";
import { wrapped } from "./wrapped.ts";

export type PanelProps = {
  readonly run: Run;
  readonly columns: number;
  readonly rows: number;
  readonly scroll: number;
  readonly offset: number;
};

type Rows = { readonly lines: readonly string[]; readonly rows: number; readonly scroll: number };

/** As many lines as fit, from as far down as the panel was scrolled. */
export function PanelRows({ lines, rows, scroll }: Rows) {
  const first = Math.min(scroll, Math.max(0, lines.length - rows));
  return (
    <Box flexDirection="column" height={rows}>
      {lines.slice(first, first + rows).map((line, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a scrolled text have no name but their place.
        <Text key={first + place} wrap="truncate">{` ${line}`}</Text>
      ))}
    </Box>
  );
}

/** A figure of a panel: its name, the figure, and how many decimals are shown. */
export type Named = readonly [name: string, figure: Figure, decimals?: number];

const NAME = 23;
const VALUE = 16;

/** Name, value and working, the working wrapped under itself. */
export const figureLines = (figures: readonly Named[], columns: number): string[] =>
  figures.flatMap(([name, figure, decimals]) =>
    wrapped(figure.working, columns - NAME - VALUE - 4).map((working, place) =>
      place === 0
        ? `${column(name, NAME)} ${column(figureText(figure, decimals), VALUE)} ${working}`
        : " ".repeat(NAME + VALUE + 2) + working,
    ),
  );

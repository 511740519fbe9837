/** Help: every stroke of the table, what its line takes, and the cautions. */
import { Box, Text } from "ink";
import { strokesOf } from "../console/strokes/table.ts";
import { CAUTIONS } from "../format/cautions.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { column } from "./fit.ts";
import { wrapped } from "./wrapped.ts";

const LINE_RULES = [
  "In any line: @10:42 or @10:42:30 another time · @-3 three minutes ago · @-0:40 · ; text adds a note · 1.2L, 1,2L and 1200 are the same.",
  "The time of an entry is the time of its first key. Esc sets a line aside, Esc brings it back; Backspace on an empty line closes it.",
  "Arrows, PgUp, PgDn scroll the log.",
];

type Row = { readonly head: string; readonly text: string };

/** The rows of the help screen at a width. */
export function helpRows(protocol: Protocol, columns: number): readonly Row[] {
  const strokes = strokesOf(protocol).flatMap(({ key, name, takes }) =>
    wrapped(takes, columns - 32).map((text, place) => ({
      head: place === 0 ? ` ${column(key, 4)}${column(name, 24)}` : " ".repeat(29),
      text,
    })),
  );
  const plainRows = [...LINE_RULES, "", ...CAUTIONS].flatMap((line) =>
    wrapped(line, columns - 3).map((text) => ({ head: " ", text })),
  );
  return [...strokes, { head: "", text: "" }, ...plainRows];
}

export function HelpScreen({
  protocol,
  scroll,
  columns,
  rows,
}: {
  protocol: Protocol;
  scroll: number;
  columns: number;
  rows: number;
}) {
  const all = helpRows(protocol, columns);
  const first = Math.min(scroll, Math.max(0, all.length - rows + 2));
  const shown = all.slice(first, first + rows - 2);
  return (
    <Box flexDirection="column" height={rows}>
      <Text inverse>
        {column(
          ` help · rows ${first + 1}–${first + shown.length} of ${all.length} · arrows scroll · Esc closes`,
          columns,
        )}
      </Text>
      {shown.map(({ head, text }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a scrolled text have no name but their place.
        <Text key={first + place} wrap="truncate">
          <Text bold>{head}</Text>
          {text === "" ? " " : text}
        </Text>
      ))}
    </Box>
  );
}

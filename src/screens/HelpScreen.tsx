/** Help: every stroke of the table, what its line takes, and the cautions. */
import { Box, Text } from "ink";
import type { Model } from "../console/model.ts";
import { strokesOf } from "../console/strokes/table.ts";
import { CAUTIONS } from "../format/cautions.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { column, cutTo } from "./fit.ts";
import { SavedState } from "./TitleBar.tsx";
import { wrapped } from "./wrapped.ts";

const LINE_RULES = [
  "In any line: @10:42 or @10:42:30 another time · @-3 three minutes ago · @-0:40 · ; text adds a note · 1.2L, 1,2L and 1200 are the same.",
  "The time of an entry is the time of its first key. Esc sets a line aside, Esc brings it back; Backspace on an empty line closes it.",
  "Arrows, PgUp, PgDn scroll the log.",
];

type Row = { readonly head: string; readonly text: string };

/** The rows of the help screen at a width. */
function helpRows(protocol: Protocol, columns: number): readonly Row[] {
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

type Props = {
  readonly model: Model;
  readonly scroll: number;
  readonly columns: number;
  readonly rows: number;
};

export function HelpScreen({ model, scroll, columns, rows }: Props) {
  const all = helpRows(model.file.protocol, columns);
  const room = rows - 1;
  const first = Math.max(0, Math.min(scroll, all.length - room));
  const shown = all.slice(first, first + room);
  const title = ` help · rows ${first + 1}–${first + shown.length} of ${all.length} · arrows scroll · Esc closes `;
  return (
    <Box flexDirection="column" height={rows}>
      <Box justifyContent="space-between">
        <Text inverse wrap="truncate">
          {cutTo(title, columns - 20)}
        </Text>
        <SavedState model={model} />
      </Box>
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

/** What an open line shows to be read before it is confirmed: a summary, or a list of what is open. */
import { Box, Text } from "ink";
import { harmless } from "../format/text.ts";
import { wrapped } from "./wrapped.ts";

type Props = {
  readonly lines: readonly string[];
  readonly columns: number;
  readonly rows: number;
  readonly scroll: number;
};

export function ShownPanel({ lines, columns, rows, scroll }: Props) {
  const all = lines.flatMap((line) => wrapped(harmless(line), columns - 3));
  const room = Math.max(1, rows - 1);
  const first = Math.min(scroll, Math.max(0, all.length - room));
  const shown = all.slice(first, first + room);
  return (
    <Box flexDirection="column" height={rows}>
      {shown.map((line, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a scrolled text have no name but their place.
        <Text key={first + place} wrap="truncate">{`  ${line}`}</Text>
      ))}
      <Text
        dimColor
        wrap="truncate"
      >{`  rows ${first + 1}–${first + shown.length} of ${all.length}${all.length > room ? " · arrows scroll" : ""}`}</Text>
    </Box>
  );
}

/** How an entry was put right, from what was written to what stands. */
import { Box, Text } from "ink";
import { historyOf } from "../console/review-history.ts";
import type { CaseFile } from "../record/case.ts";
import { cutTo } from "./fit.ts";
import { Rule } from "./Rule.tsx";
import { placeAfter } from "./review-flow.ts";
import { historyRows } from "./review-history-rows.ts";

type Props = {
  readonly file: CaseFile;
  readonly of: string;
  readonly page: number;
  readonly columns: number;
  readonly rows: number;
};

export function ReviewHistory({ file, of, page, columns, rows }: Props) {
  const history = historyOf(file, of);
  const all = history ? historyRows(history, columns - 2) : [];
  const room = Math.max(1, rows - 1);
  const pages = Math.max(1, Math.ceil(all.length / room));
  const first = placeAfter(pages, page) * room;
  const more = pages > 1 ? ` · page ${placeAfter(pages, page) + 1} of ${pages}` : "";
  return (
    <Box flexDirection="column" height={rows}>
      <Rule title={`history of #${history?.fact.entry.seq ?? of}${more}`} columns={columns} />
      {all.slice(first, first + room).map(({ text, isTitle }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a history have no name but their place.
        <Text key={place} wrap="truncate" bold={isTitle}>
          {` ${cutTo(text, columns - 2)}`}
        </Text>
      ))}
    </Box>
  );
}

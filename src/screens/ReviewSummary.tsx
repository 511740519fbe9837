/** The first page of a review: the summary in columns, turned over where one page does not hold it. */
import { Box, Text } from "ink";
import type { Course, Run } from "../figures/run.ts";
import { column } from "./fit.ts";
import { flowed, type Page, pageAt, placeAfter, type Row } from "./review-flow.ts";
import { summaryBlocks } from "./review-summary.ts";

type Props = {
  readonly run: Run;
  readonly offset: number;
  readonly columns: number;
  readonly rows: number;
  readonly page: number;
};

const WIDTH = 38;
const GAP = 2;

type Laid = { readonly space: string; readonly pages: readonly Page[]; readonly width: number };

/** What was last laid out of a case, so that turning a page reckons nothing again. */
const laid = new WeakMap<Course, Laid>();

/** The pages of a summary in a space, and how wide their columns are. */
function summaryPages(run: Run, offset: number, columns: number, rows: number): Laid {
  const space = `${columns} ${rows} ${offset} ${run.now}`;
  const before = laid.get(run.course);
  if (before?.space === space) return before;
  const across = Math.max(1, Math.floor((columns - 2 + GAP) / (WIDTH + GAP)));
  const width = Math.floor((columns - 2 - GAP * (across - 1)) / across);
  const after = { space, width, pages: flowed(summaryBlocks(run, offset, width), across, rows) };
  laid.set(run.course, after);
  return after;
}

export function ReviewSummary({ run, offset, columns, rows, page }: Props) {
  const { pages, width } = summaryPages(run, offset, columns, rows - 1);
  const shown: Page = pageAt(pages, page);
  const which = pages.length > 1 ? `page ${placeAfter(pages.length, page) + 1} of ${pages.length}` : "";
  return (
    <Box flexDirection="column" height={rows}>
      {Array.from({ length: rows - 1 }, (_, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a page have no name but their place.
        <Text key={row} wrap="truncate">
          {shown.map((lines, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: nor have its columns.
            <Cell key={place} row={lines[row]} width={width} />
          ))}
        </Text>
      ))}
      <Text dimColor>{` ${which}`}</Text>
    </Box>
  );
}

/** A title is ruled off, so that weight only repeats it. */
function Cell({ row, width }: { row: Row | undefined; width: number }) {
  if (!row?.isTitle) return <Text>{` ${column(row?.text ?? "", width)} `}</Text>;
  const rest = Math.max(0, width - row.text.length - 4);
  return (
    <Text>
      <Text dimColor> ── </Text>
      <Text bold>{row.text}</Text>
      <Text dimColor>{` ${"─".repeat(rest)} `}</Text>
    </Text>
  );
}

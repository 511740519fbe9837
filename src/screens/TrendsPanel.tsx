/** The trends of the run: the last hour or all of it, with clamp and doses on the same time. */
import { Box, Text } from "ink";
import { useContext } from "react";
import type { Model } from "../console/model.ts";
import type { Run } from "../figures/run.ts";
import { lastHour, trendsOf, wholeRun } from "../figures/trends.ts";
import { type Look, LookContext } from "./chart-dots.ts";
import { chartedTrends, type GridRow, gridRows } from "./chart-grid.ts";
import { marksOf, signsText } from "./chart-marks.ts";

type Props = {
  readonly run: Run;
  readonly window: Model["window"];
  readonly offset: number;
  readonly columns: number;
  readonly rows: number;
  /** How many pages of charts have been turned over. */
  readonly page: number;
};

export function TrendsPanel({ run: { course, now }, window, offset, columns, rows, page }: Props) {
  const look = useContext(LookContext);
  const grid = {
    trends: chartedTrends(trendsOf(course)),
    marks: marksOf(course),
    window: window === "hour" ? lastHour(now) : wholeRun(course, now),
    offset,
    look,
    cursor: null,
  };
  return <GridRows grid={gridRows(grid, columns - 2, rows, page)} rows={rows} />;
}

/** Titles stand out by weight, what is common to the charts steps back. */
export function GridRows({ grid, rows }: { grid: readonly GridRow[]; rows: number }) {
  return (
    <Box flexDirection="column" height={rows}>
      {grid.map(({ text, sort }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of a chart have no name but their place.
        <Text key={place} wrap="truncate" bold={sort === "title"} dimColor={sort === "time"}>
          {` ${text}`}
        </Text>
      ))}
    </Box>
  );
}

/** What the panel's rule says: what is shown, what the arrows do, and what the signs mean. */
export function trendsTitle({ window }: Pick<Model, "window">, look: Look): string {
  const shown = window === "hour" ? "last hour, ← → whole run" : "whole run, ← → last hour";
  return `trends · ${shown} · ${signsText(look)}`;
}

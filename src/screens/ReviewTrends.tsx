/** The trends of a case side by side, with a cursor and everything that was known at its moment. */
import { Box, Text } from "ink";
import { useContext } from "react";
import { cursorOf, shownWindow } from "../console/review.ts";
import type { Within } from "../console/review-modes.ts";
import type { Run } from "../figures/run.ts";
import { trendsOf } from "../figures/trends.ts";
import { clockTime } from "../format/instant.ts";
import { LookContext } from "./chart-dots.ts";
import { chartedTrends, gridPlan, gridRows } from "./chart-grid.ts";
import { marksOf, signsText } from "./chart-marks.ts";
import { column } from "./fit.ts";
import { Rule } from "./Rule.tsx";
import { placeAfter } from "./review-flow.ts";
import { clocksAt, type ValueAt, valuesAt } from "./review-moment.ts";
import { GridRows } from "./TrendsPanel.tsx";

type Props = {
  readonly review: Within;
  readonly run: Run;
  readonly offset: number;
  readonly columns: number;
  readonly rows: number;
};

const VALUE_WIDTH = 26;
/** Two rows of charts with their foot. */
const LEAST_CHARTS = 8;

export function ReviewTrends({ review, run: { course }, offset, columns, rows }: Props) {
  const look = useContext(LookContext);
  const { file, trends } = review;
  const cursor = cursorOf(file, trends);
  const all = trendsOf(course);
  const across = Math.max(1, Math.floor((columns - 1) / VALUE_WIDTH));
  const most = rows - 2 - LEAST_CHARTS;
  const every = valuesAt(all, cursor);
  const valueRows = Math.min(Math.ceil(every.length / across), most);
  const values = fittingValues(every, across * valueRows);
  const chartRows = rows - 2 - valueRows;
  const charted = chartedTrends(all);
  const { pages } = gridPlan(charted.length, columns - 2, chartRows);
  const grid = gridRows(
    { trends: charted, marks: marksOf(course), window: shownWindow(file, trends), offset, look, cursor },
    columns - 2,
    chartRows,
    trends.page,
  );
  const which = pages > 1 ? ` · charts ${placeAfter(pages, trends.page) + 1} of ${pages}` : "";
  const shown = trends.window === "hour" ? "an hour" : "whole run";
  return (
    <Box flexDirection="column" height={rows}>
      <Rule title={`trends · ${shown}${which} · ${signsText(look)}`} columns={columns} />
      <GridRows grid={grid} rows={chartRows} />
      <Rule title={`${clockTime({ ms: cursor, offset })} · ${clocksAt(course, cursor)}`} columns={columns} />
      {Array.from({ length: valueRows }, (_, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows of values have no name but their place.
        <Text key={row} wrap="truncate">
          {values
            .filter((_value, place) => place % valueRows === row)
            .slice(0, across)
            .map(({ name, text, age }) => (
              <Text key={name}>
                <Text dimColor>{` ${name} `}</Text>
                {column(aged(text, age, VALUE_WIDTH - name.length - 3), VALUE_WIDTH - name.length - 2)}
              </Text>
            ))}
        </Text>
      ))}
    </Box>
  );
}

/** All of them, or where there is no room for all, those that were known. */
const fittingValues = (values: readonly ValueAt[], most: number): readonly ValueAt[] =>
  values.length <= most ? values : values.filter(({ age }) => age !== "");

/** With its age, where there is room for all of it. */
const aged = (text: string, age: string, columns: number): string =>
  age !== "" && text.length + age.length + 3 <= columns ? `${text} · ${age}` : text;

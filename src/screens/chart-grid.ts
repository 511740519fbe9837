/** Charts side by side on one time: rows of text, with the marks and the clock times under each column. */
import { isMeasured, STEERED_BY, type Trend, valueAt } from "../figures/trends.ts";
import { clockTime } from "../format/instant.ts";
import { fixed } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { type Chart, chartRows, gutterFor, valuesSeen } from "./chart.ts";
import { scaleFor, timeRow, type Window } from "./chart-axis.ts";
import type { Look } from "./chart-dots.ts";
import { type Marks, marksRow } from "./chart-marks.ts";
import { column, fitting } from "./fit.ts";

type Grid = {
  readonly trends: readonly Trend[];
  readonly marks: Marks;
  readonly window: Window;
  /** Minutes east of UTC, for the clock times. */
  readonly offset: number;
  readonly look: Look;
  /** A moment that is read in place of the last values; `null` for none. */
  readonly cursor: number | null;
};

export type GridRow = { readonly text: string; readonly sort: "title" | "plot" | "time" };

type GridPlan = {
  readonly across: number;
  readonly down: number;
  /** Rows of a chart, its title among them. */
  readonly rows: number;
  readonly pages: number;
};

const GAP = 2;
const LEAST_WIDTH = 38;
/** Marks and clock times. */
const FOOT = 2;

/** How many charts stand beside and below each other in a space, and how high each is. */
export function gridPlan(charts: number, width: number, height: number): GridPlan {
  const across = Math.max(1, Math.min(charts, Math.floor((width + GAP) / (LEAST_WIDTH + GAP))));
  const room = Math.max(2, height - FOOT);
  const needed = Math.max(1, Math.ceil(charts / across));
  const down = Math.min(needed, Math.max(1, Math.floor(room / (room < 8 ? 3 : room < 15 ? 4 : 6))));
  return { across, down, rows: Math.floor(room / down), pages: Math.max(1, Math.ceil(needed / down)) };
}

/** The trends worth a chart: those a run is steered by, then whatever else was measured. */
export const chartedTrends = (trends: readonly Trend[]): readonly Trend[] =>
  trends.filter((trend, place) => place < STEERED_BY || isMeasured(trend));

/** One page of the charts in at most `height` rows, none of them wider than `width`. */
export function gridRows(grid: Grid, width: number, height: number, page: number): GridRow[] {
  const { across, down, rows, pages } = gridPlan(grid.trends.length, width, height);
  const first = (((page % pages) + pages) % pages) * across * down;
  const shown = grid.trends.slice(first, first + across * down);
  const charts = shown.map((trend) => chartOf(trend, grid));
  const gutter = Math.max(2, ...charts.map(({ scale }) => gutterFor(scale)));
  const wide = Math.floor((width - GAP * (across - 1)) / across);
  const beside = (cells: readonly string[]) => cells.map((cell) => cell.padEnd(wide)).join(" ".repeat(GAP));
  const block = (start: number): GridRow[] => {
    const line = charts.slice(start, start + across);
    const plots = line.map((chart, place) =>
      chart.isEmpty
        ? emptyRows(shown[start + place], wide, rows - 1)
        : chartRows(chart, wide, rows - 1, gutter),
    );
    const titles = line.map((_chart, place) => titleOf(shown[start + place] as Trend, grid, wide));
    return [
      { text: beside(titles), sort: "title" },
      ...Array.from(
        { length: rows - 1 },
        (_, row): GridRow => ({ text: beside(plots.map((plot) => plot[row] ?? "")), sort: "plot" }),
      ),
    ];
  };
  const foot = (row: string): GridRow => ({
    text: beside(Array.from({ length: Math.min(across, shown.length) }, () => " ".repeat(gutter) + row)),
    sort: "time",
  });
  const plotted = Math.max(0, wide - gutter);
  return [
    ...Array.from({ length: Math.ceil(shown.length / across) }, (_, line) => block(line * across)).flat(),
    foot(marksRow(grid.marks, grid.window, plotted, grid.look)),
    foot(timeRow(grid.window, grid.offset, plotted)),
  ].slice(0, height);
}

function chartOf({ lines, limits, atLeast, stepped }: Trend, { window, look, cursor }: Grid): Seen {
  const values = lines.flatMap((line) => valuesSeen(line, stepped, window));
  const scale = scaleFor(values, atLeast);
  return { lines, limits, stepped, scale, window, look, cursor, isEmpty: values.length === 0 };
}

type Seen = Chart & { readonly isEmpty: boolean };

const emptyRows = (trend: Trend | undefined, width: number, height: number): string[] => {
  const said = trend && isMeasured(trend) ? "nothing in this time" : "nothing recorded";
  return Array.from({ length: height }, (_, row) =>
    row === Math.floor((height - 1) / 2) ? column(`     ${said}`, width) : "",
  );
};

/** What is charted, and the last values in the window, or those at the cursor. */
function titleOf(trend: Trend, { window, offset, cursor }: Grid, width: number): string {
  const { title, unit, lines, decimals } = trend;
  const measured = lines.filter(({ points }) => points.length > 0);
  const items = measured.flatMap((line) => {
    const point =
      cursor === null
        ? line.points.findLast(({ at }) => at >= window.from && at <= window.to)
        : valueAt(line, cursor);
    if (!point && cursor === null) return [];
    const value = fixed(point?.value ?? null, decimals);
    return [line.sign === "" ? value : `${line.sign} ${value}`];
  });
  const last = cursor === null && measured.length === 1 ? lastTime(trend, window, offset) : "";
  const head = `${title} ${unitText(unit)}`.trim();
  const shown = fitting(
    [...items, ...(last && items.length > 0 ? [last] : [])],
    width - head.length - 1,
    (item) => item.length + 1,
  );
  return column([head, ...shown].join(" "), width);
}

function lastTime({ lines }: Trend, { from, to }: Window, offset: number): string {
  const moments = lines.flatMap(
    ({ points }) => points.findLast(({ at }) => at >= from && at <= to)?.at ?? [],
  );
  return moments.length === 0 ? "" : `at ${clockTime({ ms: Math.max(...moments), offset }).slice(0, 5)}`;
}

/** A small chart as rows of text: lines of values over a window of time, with the ends of its scale beside it. */
import type { TrendLine, TrendPoint } from "../figures/trends.ts";
import { partOf, placeOf, type Scale, scaleText, type Window } from "./chart-axis.ts";
import { type Dots, dotGrid, type Look, straight } from "./chart-dots.ts";

/** A line of a trend, without its name. */
export type Line = Pick<TrendLine, "sign" | "points">;

export type Chart = {
  readonly lines: readonly Line[];
  /** Values that are drawn across as limits, where no line runs. */
  readonly limits: readonly number[];
  readonly scale: Scale;
  readonly window: Window;
  readonly look: Look;
  /** Whether a value holds until the next, rather than moving towards it. */
  readonly stepped: boolean;
  /** A moment to be drawn as an upright line; `null` for none. */
  readonly cursor: number | null;
};

const RULES: Readonly<Record<Look, { edge: string; limit: string; cursor: string; end: string }>> = {
  braille: { edge: "│", limit: "┈", cursor: "╎", end: "•" },
  ascii: { edge: "|", limit: "~", cursor: "!", end: "o" },
};

/** The width that the scale's numbers and their edge take. */
export const gutterFor = (scale: Scale): number =>
  Math.max(scaleText(scale.low, scale).length, scaleText(scale.high, scale).length) + 1;

/**
 * The chart in exactly `height` rows of exactly `width` cells, of which `gutter` are for the scale's numbers. Where
 * the numbers or any line would not fit, they are left out whole.
 */
export function chartRows(chart: Chart, width: number, height: number, gutter: number): string[] {
  const beside = gutter < width && gutter >= gutterFor(chart.scale) ? gutter : 0;
  const labels = labelsFor(chart.scale, height);
  return plotRows(chart, width - beside, height).map((row, place) =>
    beside === 0 ? row : `${(labels[place] ?? "").padStart(beside - 1)}${RULES[chart.look].edge}${row}`,
  );
}

/** The numbers beside the rows: the ends of the scale, and its middle where there is room and it is a round number. */
function labelsFor(scale: Scale, height: number): string[] {
  const labels = Array.from({ length: height }, () => "");
  const middle = (scale.low + scale.high) / 2;
  const text = scaleText(middle, scale);
  if (height >= 5 && Math.abs(Number(text) - middle) < 1e-9) labels[rowOf(scale, middle, height)] = text;
  if (height > 1) labels[height - 1] = scaleText(scale.low, scale);
  labels[0] = scaleText(scale.high, scale);
  return labels.slice(0, height);
}

/** How far up the scale a value lies, 0 at its foot and 1 at its top. */
const heightOf = ({ low, high }: Scale, value: number): number =>
  high > low ? (value - low) / (high - low) : 0;

const rowOf = (scale: Scale, value: number, height: number): number =>
  height - 1 - placeOf(heightOf(scale, value), height);

function plotRows(chart: Chart, width: number, height: number): string[] {
  const { scale, window, look, limits, cursor } = chart;
  const dots = dotGrid(width, height, look);
  for (const line of chart.lines) drawLine(dots, line, chart);
  const cells = dots.rows();
  const free = (row: number, column: number) => cells[row]?.[column] === " ";
  for (const limit of limits.filter((value) => value >= scale.low && value <= scale.high)) {
    const row = rowOf(scale, limit, height);
    for (let column = 0; column < width; column++)
      if (free(row, column)) put(cells, row, column, RULES[look].limit);
  }
  if (cursor !== null && cursor >= window.from && cursor <= window.to) {
    const column = placeOf(partOf(window, cursor), width);
    for (let row = 0; row < height; row++)
      if (free(row, column) || cells[row]?.[column] === RULES[look].limit)
        put(cells, row, column, RULES[look].cursor);
  }
  for (const line of chart.lines) signEnds(cells, line, chart);
  return cells.map((row) => row.join(""));
}

/** Cells outside the plot are not drawn. */
function put(cells: readonly string[][], row: number, column: number, sign: string): void {
  const cell = cells[row];
  if (cell !== undefined && column < cell.length) cell[column] = sign;
}

function drawLine(dots: Dots, { points }: Line, { scale, window, stepped }: Chart): void {
  const dotOf = (at: number, value: number) =>
    [
      placeOf(partOf(window, at), dots.across),
      dots.down - 1 - placeOf(heightOf(scale, value), dots.down),
    ] as const;
  for (const { point, next, end } of stretches({ points }, stepped)) {
    if (isIn(window, point)) dots.set(...dotOf(point.at, point.value));
    const [from, to] = [Math.max(point.at, window.from), Math.min(end, window.to)];
    if (from >= to) continue;
    const on = (at: number) => (stepped || !next ? point.value : between(point, next, at));
    straight(dots, dotOf(from, on(from)), dotOf(to, on(to)));
    if (stepped && next && to === next.at) straight(dots, dotOf(to, point.value), dotOf(to, next.value));
  }
}

type Stretch = {
  readonly point: TrendPoint;
  /** The point that it is joined to, if any. */
  readonly next: TrendPoint | undefined;
  /** How far something is drawn for it. */
  readonly end: number;
};

function stretches({ points }: Pick<Line, "points">, stepped: boolean): Stretch[] {
  return points.map((point, place) => {
    const after = points[place + 1];
    const next = after && joins(point, after) ? after : undefined;
    return { point, next, end: next?.at ?? (stepped ? point.until : point.at) };
  });
}

/** The values of what is seen of a line in a window. */
export const valuesSeen = (line: Pick<Line, "points">, stepped: boolean, { from, to }: Window): number[] =>
  stretches(line, stepped).flatMap(({ point, next, end }) =>
    end < from || point.at > to ? [] : [point.value, ...(next && next.at > to ? [next.value] : [])],
  );

/** The value on the straight way from one point to a later one. */
const between = (point: TrendPoint, next: TrendPoint, at: number): number =>
  point.value + ((at - point.at) / (next.at - point.at)) * (next.value - point.value);

const isIn = ({ from, to }: Window, { at }: TrendPoint): boolean => at >= from && at <= to;

/** A value is joined to the next only while it is relied on; longer gaps are not bridged. */
const joins = ({ until }: TrendPoint, next: TrendPoint): boolean => next.at <= until;

/** The line's letter, or a plain mark, at the last point of every unbroken stretch in the window. */
function signEnds(cells: readonly string[][], { sign, points }: Line, chart: Chart): void {
  const { scale, window, look } = chart;
  points.forEach((point, place) => {
    const next = points[place + 1];
    const goesOn = next !== undefined && isIn(window, next) && joins(point, next);
    if (!isIn(window, point) || goesOn) return;
    const column = placeOf(partOf(window, point.at), cells[0]?.length ?? 0);
    put(cells, rowOf(scale, point.value, cells.length), column, sign || RULES[look].end);
  });
}

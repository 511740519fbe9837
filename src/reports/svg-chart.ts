/** A chart of one trend over time: its lines, its limits, and a legend that needs no colour. */
import type { Trend, TrendLine, TrendPoint } from "../figures/trends.ts";
import { fixed, plain } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { html, type Markup } from "./html-parts.ts";
import { CHART, drawing, type Frame, hours, place, shades } from "./svg-frame.ts";
import { type ValueAxis, valueAxis } from "./value-axis.ts";

const PLOT = 132;
/** More signs on a line than this would run into each other. */
const MOST_SIGNS = 60;

/** `id` names it on the page; `says` tells in words what it shows. */
export function trendChart(id: string, trend: Trend, frame: Frame, says: string): Markup {
  const lines = drawnLines(trend, frame);
  const bottom = CHART.top + PLOT;
  const all = [...lines.flatMap(({ points }) => points.map(({ value }) => value)), ...trend.limits];
  const values = valueAxis(all.length > 0 ? all : [0], trend.atLeast, bottom, CHART.top);
  const inside = html`${shades(frame, CHART.top, bottom)}${valueMarks(values)}${hours(frame, CHART.top, bottom)}${trend.limits.map(
    (limit) => limitLine(limit, values, trend),
  )}${lines.map((line, i) => drawnLine(line, i, trend, frame, values))}${legend(lines, trend)}`;
  return drawing(id, titleOf(trend), says, bottom + CHART.below, inside);
}

/** `Pressure (mmHg)` */
export const titleOf = ({ title, unit }: Trend): string =>
  unitText(unit) === "" ? title : `${title} (${unitText(unit)})`;

/** The lines that have a point in the frame, with those points only. */
export const drawnLines = ({ lines }: Trend, { axis }: Frame): TrendLine[] =>
  lines
    .map((line) => ({ ...line, points: line.points.filter(({ at }) => at >= axis.from && at <= axis.to) }))
    .filter(({ points }) => points.length > 0);

function valueMarks({ marks, at }: ValueAxis): Markup {
  const decimals = Math.max(...marks.map((mark) => (plain(mark).split(".")[1] ?? "").length));
  return html`${marks.map(
    (mark) =>
      html`<path class="grid" d="M${CHART.left} ${place(at(mark))}H${CHART.right}"/><text class="mark" x="${CHART.left - 6}" y="${place(at(mark) + 4)}" text-anchor="end">${fixed(mark, decimals)}</text>`,
  )}`;
}

const limitLine = (limit: number, { at }: ValueAxis, { unit }: Trend): Markup =>
  html`<path class="limit" d="M${CHART.left} ${place(at(limit))}H${CHART.right}"/><text class="mark limit-name" x="4" y="${place(at(limit) + 4)}">limit ${plain(limit)} ${unitText(unit)}</text>`;

/** Solid where a value is relied on until the next; dotted over a gap; a sign at each value, or at every few. */
function drawnLine({ points }: TrendLine, i: number, trend: Trend, frame: Frame, values: ValueAxis): Markup {
  const x = (ms: number) => place(frame.axis.at(ms));
  const y = (point: TrendPoint) => place(values.at(point.value));
  const pieces = points.map((point, n): [solid: string, dotted: string] => {
    const next = points[n + 1];
    const start = `M${x(point.at)} ${y(point)}`;
    if (trend.stepped)
      return [`${start}H${x(Math.min(point.until, next?.at ?? point.until, frame.now))}`, ""];
    if (!next) return ["", ""];
    const line = `${start}L${x(next.at)} ${y(next)}`;
    return next.at <= point.until ? [line, ""] : ["", line];
  });
  const every = Math.ceil(points.length / MOST_SIGNS);
  const signed = trend.stepped ? [] : points.filter((_, n) => n % every === 0);
  const signs = signed.map((point) => sign(i, Number(x(point.at)), Number(y(point))));
  return html`<g class="line-${i % SIGNS.length}"><path class="line" d="${pieces.map(([solid]) => solid).join("")}"/><path class="gap" d="${pieces.map(([, dotted]) => dotted).join("")}"/>${signs}</g>`;
}

/** Circle, square, triangle, diamond, cross: which line is which can be told in black and white. */
const SIGNS: readonly ((x: number, y: number) => string)[] = [
  (x, y) => `M${place(x - 3)} ${place(y)}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0Z`,
  (x, y) => `M${place(x - 3)} ${place(y - 3)}h6v6h-6Z`,
  (x, y) => `M${place(x)} ${place(y - 4)}l4 7h-8Z`,
  (x, y) => `M${place(x)} ${place(y - 4)}l4 4l-4 4l-4 -4Z`,
  (x, y) => `M${place(x - 3)} ${place(y - 3)}l6 6m0 -6l-6 6`,
];

const sign = (line: number, x: number, y: number): Markup =>
  html`<path class="sign" d="${SIGNS[line % SIGNS.length]?.(x, y) ?? ""}"/>`;

/** The names of the lines above the plot, each with its sign. */
function legend(lines: readonly TrendLine[], trend: Trend): Markup {
  const names = lines.map(({ name }) => name);
  let x: number = CHART.left;
  const entries = names.map((name, i) => {
    const from = x;
    x += 30 + name.length * 7;
    const mark = trend.stepped ? html`<path class="line" d="M${from} 13h16"/>` : sign(i, from + 8, 13);
    return html`<g class="line-${i % SIGNS.length}">${mark}<text x="${from + 20}" y="17">${name}</text></g>`;
  });
  return html`${entries}`;
}

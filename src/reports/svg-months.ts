/** A run chart: a value a month, with a gap where a month has none, and the value of all cases as a rule. */
import { html, type Markup } from "./html-parts.ts";
import { CHART, drawing, place } from "./svg-frame.ts";

export type MonthValue = { readonly month: string; readonly value: number | null };

type RunChart = {
  readonly id: string;
  readonly title: string;
  /** What the chart shows, for those who do not see it. */
  readonly says: string;
  readonly values: readonly MonthValue[];
  /** Over all cases. */
  readonly middle: number | null;
  /** The top of the scale; it begins at nought. */
  readonly most: number;
  readonly text: (value: number) => string;
};

const diamond = (x: number, y: number): string =>
  `M${place(x)} ${place(y - 3.4)}l3.4 3.4l-3.4 3.4l-3.4 -3.4z`;

const [TOP, BOTTOM, HEIGHT] = [12, 132, 156];
/** So many months have their names below. */
const NAMED = 12;

/** `numbers` says beside the drawing what it shows. */
export function runChart({ id, title, says, values, middle, most, text }: RunChart, numbers: Markup): Markup {
  const x = (i: number) => CHART.left + ((CHART.right - CHART.left) * (i + 0.5)) / Math.max(1, values.length);
  const y = (value: number) => BOTTOM - ((BOTTOM - TOP) * value) / Math.max(most, Number.EPSILON);
  const each = Math.ceil(values.length / NAMED);
  const inside = html`${[0, most / 2, most].map(
    (value) =>
      html`<path class="grid" d="M${CHART.left} ${place(y(value))}H${CHART.right}"/><text class="mark" x="${CHART.left - 8}" y="${place(y(value) + 4)}" text-anchor="end">${text(value)}</text>`,
  )}${
    middle !== null && html`<path class="limit" d="M${CHART.left} ${place(y(middle))}H${CHART.right}"/>`
  }${values.map(
    ({ month }, i) =>
      i % each === 0 &&
      html`<text class="mark" x="${place(x(i))}" y="${BOTTOM + 16}" text-anchor="middle">${month}</text>`,
  )}<g class="line-0"><path class="line" d="${pathOf(values, x, y)}"/>${values.map(
    ({ value }, i) => value !== null && html`<path class="sign" d="${diamond(x(i), y(value))}"/>`,
  )}</g>`;
  return html`<figure><figcaption>${title}</figcaption>${drawing(id, title, says, HEIGHT, inside)}<div class="beside">${numbers}</div></figure>`;
}

/** A line is drawn between months next to each other, never over one without a value. */
function pathOf(
  values: readonly MonthValue[],
  x: (i: number) => number,
  y: (value: number) => number,
): string {
  return values
    .map(({ value }, i) => {
      if (value === null) return "";
      const goesOn = (values[i - 1]?.value ?? null) !== null;
      return `${goesOn ? "L" : "M"}${place(x(i))} ${place(y(value))}`;
    })
    .join("");
}

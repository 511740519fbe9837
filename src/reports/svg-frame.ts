/** The frame that all charts share: its size, the hours below, and when bypass and clamp were on behind it. */
import { intervalsOf, type Spans } from "../figures/spans.ts";
import { clockTime } from "../format/instant.ts";
import { html, type Markup } from "./html-parts.ts";
import { type TimeAxis, timeAxis } from "./time-axis.ts";

/** In the unit of the drawing; the page scales it. */
export const CHART = { width: 760, left: 112, right: 748, top: 26, below: 20 } as const;

export type Frame = {
  readonly axis: TimeAxis;
  readonly offset: number;
  readonly spans: Spans;
  readonly now: number;
};

/** The frame that all charts of a report share. */
export const frameOf = (
  window: { readonly from: number; readonly to: number },
  spans: Spans,
  now: number,
  offset: number,
): Frame => ({ axis: timeAxis(window, CHART.left, CHART.right, offset), offset, spans, now });

/** A drawing with a name and a text for those who do not see it. */
export const drawing = (id: string, title: string, says: string, height: number, inside: Markup): Markup =>
  html`<svg viewBox="0 0 ${CHART.width} ${height}" role="img" aria-labelledby="${id}-t ${id}-d"><title id="${id}-t">${title}</title><desc id="${id}-d">${says}</desc>${inside}</svg>`;

/** Shades for the time on bypass and, darker, under the clamp. */
export const shades = ({ axis, spans, now }: Frame, top: number, bottom: number): Markup =>
  html`${["bypass", "clamp"].map((what) =>
    intervalsOf(spans, what).map(({ from, to }) => {
      const [x, end] = [axis.at(from), axis.at(to ?? now)];
      return html`<rect class="on-${what}" x="${place(x)}" y="${top}" width="${place(Math.max(0, end - x))}" height="${bottom - top}"/>`;
    }),
  )}`;

/** The times of the wall clock below, each with its line. */
export const hours = ({ axis, offset }: Frame, top: number, bottom: number): Markup =>
  html`${axis.marks.map(
    ({ ms, x }) =>
      html`<path class="grid" d="M${place(x)} ${top}V${bottom}"/><text class="mark" x="${place(x)}" y="${bottom + 14}" text-anchor="middle">${clockTime({ ms, offset }).slice(0, 5)}</text>`,
  )}`;

/** A place on the drawing, to a tenth. */
export const place = (value: number): string => String(Number(value.toFixed(1)));

/** A row of marks on the time of a chart: bars for bypass and clamp, a sign for each dose. */
import type { Course } from "../figures/run.ts";
import { intervalsOf } from "../figures/spans.ts";
import { partOf, placeOf, type Window } from "./chart-axis.ts";
import type { Look } from "./chart-dots.ts";

export type Marks = {
  /** What was on, the most telling last: it is drawn over the others. */
  readonly bars: readonly { readonly sign: Sign; readonly from: number; readonly to: number | null }[];
  /** What happened at one moment. */
  readonly points: readonly { readonly sign: Sign; readonly at: number }[];
};

type Sign = "bypass" | "clamp" | "dose";

export const SIGNS: Readonly<Record<Look, Readonly<Record<Sign, string>>>> = {
  braille: { bypass: "─", clamp: "━", dose: "▾" },
  ascii: { bypass: "-", clamp: "=", dose: "v" },
};

/** The marks as one row, on the same time as a chart of that width; what lies outside the window is left out. */
export function marksRow({ bars, points }: Marks, window: Window, width: number, look: Look): string {
  const row = Array.from({ length: width }, () => " ");
  const signs = SIGNS[look];
  for (const { sign, from, to } of bars) {
    const [start, end] = [Math.max(from, window.from), Math.min(to ?? window.to, window.to)];
    if (start > end) continue;
    const [first, last] = [placeOf(partOf(window, start), width), placeOf(partOf(window, end), width)];
    for (let place = first; place <= last && place < width; place++) row[place] = signs[sign];
  }
  for (const { sign, at } of points)
    if (at >= window.from && at <= window.to && width > 0)
      row[placeOf(partOf(window, at), width)] = signs[sign];
  return row.join("");
}

/** What the signs mean: `─ bypass  ━ clamp  ▾ dose`. */
export const signsText = (look: Look): string =>
  Object.entries(SIGNS[look])
    .map(([name, sign]) => `${sign} ${name}`)
    .join("  ");

/** Bypass, the clamp over it, and the beginning of every dose. */
export const marksOf = ({ spans, doses }: Course): Marks => ({
  bars: (["bypass", "clamp"] as const).flatMap((sign) =>
    intervalsOf(spans, sign).map(({ from, to }) => ({ sign, from, to })),
  ),
  points: doses.map(({ start }) => ({ sign: "dose", at: start })),
});

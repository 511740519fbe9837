/** The axes of a small chart: a scale that ends on round numbers, and clock times. */
import { MINUTE } from "../format/duration.ts";
import { clockTime } from "../format/instant.ts";

/** A stretch of time in milliseconds since the epoch, both ends shown. */
export type Window = { readonly from: number; readonly to: number };

/** The values at the foot and at the top of a chart, and how many decimals tell its numbers apart. */
export type Scale = { readonly low: number; readonly high: number; readonly decimals: number };

/** Where a part between 0 and 1 falls among `count` places: 0 in the first, 1 in the last. */
export const placeOf = (part: number, count: number): number =>
  Math.max(0, Math.min(count - 1, Math.floor(part * count)));

/** How far a moment lies along a window, 0 at its beginning and 1 at its end; 0 in a window without a length. */
export const partOf = ({ from, to }: Window, at: number): number =>
  to > from ? (at - from) / (to - from) : 0;

/** What a quotient of two numbers can be off by, in steps: a value on a round number stays there, one beside it is held. */
const DUST = 1e-10;

/** The scale for values, at least so wide, from one round number to another. */
export function scaleFor(values: readonly number[], atLeast: number): Scale {
  const sound = values.filter(Number.isFinite);
  const [least, most] = sound.reduce(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
  const [from, to] = sound.length === 0 ? [0, atLeast] : widened(least, most, atLeast);
  const step = roundStep((to - from) / 4);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return { low: Math.floor(from / step + DUST) * step, high: Math.ceil(to / step - DUST) * step, decimals };
}

/** Widened about its middle; a quantity that is never below nought is not widened below it. */
function widened(least: number, most: number, atLeast: number): [number, number] {
  const lacking = Math.max(0, atLeast - (most - least)) / 2;
  const from = least >= 0 ? Math.max(0, least - lacking) : least - lacking;
  return [from, Math.max(most, from + Math.max(atLeast, most - from))];
}

/** 1, 2 or 5 times a power of ten, not smaller than asked. */
function roundStep(asked: number): number {
  const power = 10 ** Math.floor(Math.log10(asked));
  return ([1, 2, 5].find((times) => times * power >= asked - 1e-9 * power) ?? 10) * power;
}

export const scaleText = (value: number, { decimals }: Scale): string => {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
};

/** Minutes between clock times, each a part of the hours and the day. */
const STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 720, 1440];
const LABEL = "10:42".length;
const APART = LABEL + 3;

/** A row of clock times, each beginning under its moment; one that would not fit whole is left out. */
export function timeRow(window: Window, offset: number, width: number): string {
  const row = Array.from({ length: width }, () => " ");
  const minutes = (window.to - window.from) / MINUTE;
  const most = Math.floor(width / APART);
  if (minutes <= 0 || most < 1) return row.join("");
  const step =
    (STEPS.find((one) => minutes / one <= most) ?? Math.ceil(minutes / most / 1440) * 1440) * MINUTE;
  const wall = offset * MINUTE;
  let free = 0;
  for (let at = Math.ceil((window.from + wall) / step) * step - wall; at <= window.to; at += step) {
    const place = placeOf(partOf(window, at), width);
    if (place < free || place + LABEL > width) continue;
    row.splice(place, LABEL, ...clockTime({ ms: at, offset }).slice(0, LABEL));
    free = place + LABEL + 1;
  }
  return row.join("");
}

/** The value axis of a chart: round marks around everything that is shown. */

export type ValueAxis = {
  readonly at: (value: number) => number;
  readonly marks: readonly number[];
};

const MOST_MARKS = 5;

/** From `bottom` upwards to `top` (places on the page, top the smaller); at least `atLeast` high in its own unit. */
export function valueAxis(
  values: readonly number[],
  atLeast: number,
  bottom: number,
  top: number,
): ValueAxis {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const lacking = Math.max(0, atLeast - (high - low)) / 2;
  const step = roundStep((high - low + 2 * lacking) / (MOST_MARKS - 1));
  const first = Math.floor((low - lacking) / step);
  const last = Math.max(first + 1, Math.ceil((high + lacking) / step));
  const [from, to] = [first * step, last * step];
  return {
    at: (value) => bottom - ((value - from) / (to - from)) * (bottom - top),
    marks: Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12))),
  };
}

/** 1, 2 or 5 times a power of ten, not below `least`. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(least, 1e-9)));
  return ([1, 2, 5, 10].find((times) => times * power >= least * (1 - 1e-9)) ?? 10) * power;
}

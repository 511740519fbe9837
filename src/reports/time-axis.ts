/** The time axis that every chart of a report shares: from moments to places, and the marks below. */
import { MINUTE } from "../format/duration.ts";

export type TimeAxis = {
  readonly from: number;
  readonly to: number;
  /** The place of a moment between `left` and `right`; what lies outside is held at the edge. */
  readonly at: (ms: number) => number;
  readonly marks: readonly { readonly ms: number; readonly x: number }[];
};

const STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440].map((minutes) => minutes * MINUTE);
const MOST_MARKS = 10;

/** `offset` in minutes east of UTC, so that marks stand at whole times of the wall clock. */
export function timeAxis(
  { from, to }: { readonly from: number; readonly to: number },
  left: number,
  right: number,
  offset: number,
): TimeAxis {
  const length = Math.max(MINUTE, to - from);
  const at = (ms: number) => left + (Math.min(length, Math.max(0, ms - from)) / length) * (right - left);
  const step = STEPS.find((one) => length / one <= MOST_MARKS) ?? Math.ceil(length / MOST_MARKS);
  const wall = offset * MINUTE;
  const first = Math.ceil((from + wall) / step) * step - wall;
  const count = Math.max(0, Math.floor((from + length - first) / step) + 1);
  const marks = Array.from({ length: count }, (_, i) => first + i * step).map((ms) => ({ ms, x: at(ms) }));
  return { from, to: from + length, at, marks };
}

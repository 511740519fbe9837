/** How long a quantity lay below a threshold, and by how much: by step-hold, with nothing bridged. */
import { MINUTE } from "../format/duration.ts";
import { fixed, plain } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Stretch } from "./perfused.ts";

/** A value that held from one moment to another, in milliseconds since the epoch. */
export type Held = { readonly from: number; readonly to: number; readonly value: number };

export type Below = {
  /** Minutes strictly below the threshold. */
  readonly minutes: number;
  /** Threshold − value, summed over those minutes: the quantity's unit × min. */
  readonly area: number;
  /** The lowest value that held; `null` when none did. */
  readonly lowest: number | null;
  /** Minutes in which a value held, and minutes in which none did. */
  readonly assessed: number;
  readonly notAssessed: number;
};

/** A value, with the moment it was measured and the last at which it is relied on. */
export type Sample = { readonly at: number; readonly value: number; readonly until: number };

/** Each value holds until the next, at the most as long as it is relied on. `samples` in the order of happening. */
export function stepHold(samples: readonly Sample[]): Held[] {
  return samples.flatMap(({ at, value, until }, i) => {
    const to = Math.min(until, samples[i + 1]?.at ?? until);
    return to > at ? [{ from: at, to, value }] : [];
  });
}

/** What held, as far as it lies in the stretches and before `now`. */
export const within = (held: readonly Held[], stretches: readonly Stretch[], now: number): Held[] =>
  held.flatMap(({ from, to, value }) =>
    stretches.flatMap((stretch) => {
      const part = { from: Math.max(from, stretch.from), to: Math.min(to, stretch.to ?? now, now), value };
      return part.to > part.from ? [part] : [];
    }),
  );

/**
 * Minutes and area strictly below `threshold` in the stretches up to `now`. Source of the area: threshold − value
 * cumulated while below it, Mukaida H et al. J Thorac Cardiovasc Surg 2019; the step-hold is our own reading of it.
 */
export function belowThreshold(
  held: readonly Held[],
  threshold: number,
  stretches: readonly Stretch[],
  now: number,
): Below {
  const parts = within(held, stretches, now);
  const low = parts.filter(({ value }) => value < threshold);
  const lasted = ({ from, to }: { from: number; to: number }) => Math.max(0, to - from) / MINUTE;
  const sum = <T>(list: readonly T[], of: (one: T) => number) => list.reduce((all, one) => all + of(one), 0);
  const assessed = sum(parts, lasted);
  const all = sum(stretches, ({ from, to }) => lasted({ from, to: Math.min(to ?? now, now) }));
  return {
    minutes: sum(low, lasted),
    area: sum(low, (part) => (threshold - part.value) * lasted(part)),
    lowest: parts.length === 0 ? null : Math.min(...parts.map(({ value }) => value)),
    assessed,
    notAssessed: Math.max(0, all - assessed),
  };
}

/** The same as figures: minutes, area in `areaUnit`, and the lowest value; with how much of the time was assessed. */
export function belowFigures(
  { minutes, area, lowest, assessed, notAssessed }: Below,
  threshold: number,
  unit: string,
  areaUnit: string,
): { readonly minutes: Figure; readonly area: Figure; readonly lowest: Figure } {
  const share = `${fixed(assessed)} of ${fixed(assessed + notAssessed)} min on bypass assessed`;
  if (lowest === null) {
    const why = assessed + notAssessed > 0 ? `not assessed: ${share}` : "no time on bypass";
    return { minutes: missing("min", why), area: missing(areaUnit, why), lowest: missing(unit, why) };
  }
  const limit = `below ${plain(threshold)} ${unitText(unit)}`;
  return {
    minutes: known(minutes, "min", `${limit}; ${share}`, STEP_HOLD),
    area: known(area, areaUnit, `(${plain(threshold)} − value) × min while ${limit}; ${share}`, AREA),
    lowest: known(lowest, unit, share, STEP_HOLD),
  };
}

const STEP_HOLD = "a reading holds until the next, at the most as long as the protocol relies on it";
const AREA = `Mukaida H et al. J Thorac Cardiovasc Surg 2019; ${STEP_HOLD}`;

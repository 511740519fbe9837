/** Cooling and warming: the gradient between the bloods, the rate, and the minutes to the temperature ordered. */
import { MINUTE } from "../format/duration.ts";
import { fixed, plain } from "../format/number.ts";
import type { ReadingName } from "../record/quantities.ts";
import { lastOf } from "../record/standing.ts";
import { type Figure, known, missing } from "./figure.ts";
import {
  type Latest,
  latestOf,
  latestReading,
  type Measured,
  type Moment,
  readingSeries,
  whyNot,
} from "./measured.ts";

export type Gradient = {
  /** Which way the heat goes: arterial blood colder than venous cools, warmer warms. */
  readonly direction: "cooling" | "warming" | "level" | null;
  /** K, from the colder to the warmer blood. */
  readonly figure: Figure;
  /** The newer of the two readings. */
  readonly last: Latest | null;
};

/** The gradient between arterial outlet and venous blood in K, from readings that hold. */
export function gradientOf(moment: Moment): Gradient {
  const arterial = latestReading(moment, "arterialTemperature");
  const venous = latestReading(moment, "venousTemperature");
  const lacking = (why: string): Gradient => ({ direction: null, figure: missing("K", why), last: null });
  if (!arterial?.holds) return lacking(whyNot(arterial, "arterial outlet temperature"));
  if (!venous?.holds) return lacking(whyNot(venous, "venous blood temperature"));
  const difference = arterial.value - venous.value;
  const direction = difference > 0 ? "warming" : difference < 0 ? "cooling" : "level";
  const working = `${direction}: arterial ${fixed(arterial.value, 1)} °C, venous ${fixed(venous.value, 1)} °C`;
  return {
    direction,
    figure: known(Math.abs(difference), "K", working),
    last: arterial.at >= venous.at ? arterial : venous,
  };
}

/** Where the patient's temperature is looked for, first to last; venous blood stands for it where no site is read. */
const SITES = [
  "nasopharyngealTemperature",
  "bladderTemperature",
  "rectalTemperature",
  "venousTemperature",
] as const satisfies readonly ReadingName[];

/** The patient's temperature from the first site that has a reading that holds, with the readings of that site. */
export function bodyTemperature(
  moment: Moment,
): { readonly latest: Latest; readonly series: readonly Measured[] } | null {
  for (const site of SITES) {
    const series = readingSeries(moment.course, site).filter(({ at }) => at <= moment.now);
    const latest = latestOf(series, moment.now);
    if (latest?.holds) return { latest, series };
  }
  return null;
}

/**
 * How fast the patient warms (below nought: cools) in K/min: between the last reading and the one before it that is at
 * least a minute older, no further apart than a reading is relied on. Never from one reading.
 */
export function warmingRate(moment: Moment): Figure {
  const body = bodyTemperature(moment);
  if (!body) return missing("K/min", "no temperature of the patient that is recent enough");
  const { latest, series } = body;
  const before = series.findLast(({ at }) => at <= latest.at - MINUTE);
  const longest = moment.course.protocol.watch.readingsHold.value;
  if (!before || latest.at - before.at > longest * MINUTE)
    return missing("K/min", `needs two readings of ${latest.name} 1 to ${plain(longest)} min apart`);
  const minutes = (latest.at - before.at) / MINUTE;
  const working = `${latest.name} (${fixed(latest.value, 1)} − ${fixed(before.value, 1)}) °C / ${fixed(minutes, 1)} min`;
  return known((latest.value - before.value) / minutes, "K/min", working);
}

/** Minutes until the patient reaches the temperature ordered, if the rate stays what it was. */
export function minutesToTarget(moment: Moment): Figure {
  const order = lastOf(moment.course.record.facts, "target")?.entry.celsius;
  if (order === undefined) return missing("min", "no temperature ordered");
  const rate = warmingRate(moment);
  const body = bodyTemperature(moment);
  if (rate.value === null || !body) return missing("min", rate.working);
  const { latest } = body;
  const left = order - latest.value;
  if (left === 0) return known(0, "min", `${latest.name} is at ${plain(order)} °C`);
  if (rate.value === 0 || left > 0 !== rate.value > 0)
    return missing("min", `${latest.name} does not move towards ${plain(order)} °C`);
  const working = `(${plain(order)} − ${fixed(latest.value, 1)}) °C / ${fixed(rate.value, 2)} °C/min, less ${fixed(latest.age / MINUTE)} min since the reading`;
  return known(Math.max(0, left / rate.value - latest.age / MINUTE), "min", working);
}

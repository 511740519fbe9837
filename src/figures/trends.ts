/** Trends: everything measured over the run, a line a quantity, in the units that are shown. */

import { MINUTE } from "../format/duration.ts";
import { lately } from "../format/lately.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { GAS_VALUES, type GasName, type Quantity, READINGS, type ReadingName } from "../record/quantities.ts";
import { ofKind } from "../record/standing.ts";
import { shownUnit, toShown } from "./conversions.ts";
import {
  gasSeries,
  haematocritSeries,
  type Measured,
  readingSeries,
  venousSaturationSeries,
} from "./measured.ts";
import { deliveryOverTime } from "./oxygen-over-time.ts";
import type { Course } from "./run.ts";
import { intervalsOf } from "./spans.ts";

export type TrendPoint = {
  /** Milliseconds since the epoch. */
  readonly at: number;
  readonly value: number;
  /** The last moment at which it is relied on. */
  readonly until: number;
};

export type TrendLine = {
  /** A letter that tells it from the other lines of its trend; empty where it is the only one there can be. */
  readonly sign: string;
  /** A short name that is enough by itself: `MAP`, `a pCO2`. */
  readonly name: string;
  /** In the order of happening. */
  readonly points: readonly TrendPoint[];
};

export type Trend = {
  readonly title: string;
  /** UCUM code of the unit that is shown. */
  readonly unit: string;
  readonly decimals: number;
  /** The least height of a scale that does not make a storm of a ripple. */
  readonly atLeast: number;
  /** The protocol's limits, in the shown unit. */
  readonly limits: readonly number[];
  /** Whether a value holds until the next, rather than moving towards it. */
  readonly stepped: boolean;
  readonly lines: readonly TrendLine[];
};

/** Every trend of a case, the four of the run first; what was never measured has lines without points. */
export const trendsOf = lately((course: Course): readonly Trend[] => [
  ...trendsOfTheRun(course),
  ...otherTrends(course),
]);

/** How many of the trends are those that a run is steered by: flow, pressure, temperatures, oxygen delivery. */
export const STEERED_BY = 4;

const trendsOfTheRun = (course: Course): Trend[] => {
  const { watch, temperature } = course.protocol;
  return [
    { ...readings(course, "flow", 1), title: "flow" },
    {
      ...readings(course, "meanPressure", 20, [watch.meanPressure.low, watch.meanPressure.high]),
      title: "MAP",
    },
    {
      ...plainTrend("temperature", "Cel", 1, 4, [
        readingLine(course, "arterialTemperature", "a"),
        readingLine(course, "venousTemperature", "v"),
        readingLine(course, "nasopharyngealTemperature", "n"),
        readingLine(course, "bladderTemperature", "b"),
        readingLine(course, "rectalTemperature", "r"),
      ]),
      limits: [temperature.outletLimit.value],
    },
    {
      ...plainTrend("DO2i", "mL/min/m2", 0, 100, [
        {
          sign: "",
          name: "DO2i",
          points: deliveryOverTime(course).map(({ from, to, value }) => ({ at: from, value, until: to })),
        },
      ]),
      limits: [watch.oxygenDelivery.value],
      stepped: true,
    },
  ];
};

const otherTrends = (course: Course): Trend[] => {
  const { watch } = course.protocol;
  return [
    plainTrend("venous saturation", "%", 0, 10, [line("", "SvO2", venousSaturationSeries(course))]),
    {
      ...plainTrend("haematocrit", "%", 1, 6, [line("", "Hct", haematocritSeries(course))]),
      limits: [watch.haematocritFloor.value],
    },
    plainTrend("cerebral saturation", "%", 0, 10, [
      readingLine(course, "cerebralLeft", "l"),
      readingLine(course, "cerebralRight", "r"),
    ]),
    actTrend(course),
    readings(course, "centralVenousPressure", 10),
    readings(course, "linePressure", 50),
    gas(course, "lactate", 2),
    gas(course, "glucose", 4, [watch.glucose.low, watch.glucose.high]),
    gas(course, "potassium", 2, [watch.potassium.low, watch.potassium.high]),
    gas(course, "carbonDioxide", 10, [watch.carbonDioxide.low, watch.carbonDioxide.high]),
    gas(course, "oxygen", 100),
    gas(course, "ph", 0.2),
    gas(course, "baseExcess", 4),
    gas(course, "bicarbonate", 4),
    gas(course, "haemoglobin", 2),
    { ...gas(course, "saturation", 4), title: "sample saturation" },
    gas(course, "sodium", 10),
    gas(course, "calcium", 0.4),
    readings(course, "sweep", 2),
    readings(course, "inspiredOxygen", 20),
    readings(course, "addedCarbonDioxide", 0.2),
    readings(course, "volatile", 1),
    readings(course, "vacuum", 20),
    readings(course, "reservoir", 500),
    readings(course, "waterTemperature", 4),
  ];
};

const plainTrend = (
  title: string,
  unit: string,
  decimals: number,
  atLeast: number,
  lines: readonly TrendLine[],
): Trend => ({ title, unit, decimals, atLeast, lines, limits: [], stepped: false });

function readings(course: Course, name: ReadingName, atLeast: number, limits: readonly number[] = []): Trend {
  const { name: title, unit, decimals }: Quantity = READINGS[name];
  return { ...plainTrend(title, unit, decimals, atLeast, [readingLine(course, name, "")]), limits };
}

/** A gas quantity, arterial and venous; `atLeast` and the limits in the unit of the record. */
function gas(course: Course, name: GasName, atLeast: number, limits: readonly number[] = []): Trend {
  const quantity: Quantity = GAS_VALUES[name];
  const { unit, shown } = shownAs(name, quantity, course.protocol);
  const decimals = decimalsIn(quantity, shown(1));
  return {
    ...plainTrend(quantity.name, unit, decimals, shown(atLeast), [
      line("a", `a ${quantity.short}`, gasSeries(course, name, "arterial"), shown),
      line("v", `v ${quantity.short}`, gasSeries(course, name, "venous"), shown),
    ]),
    limits: limits.map(shown),
  };
}

const shownAs = (name: string, { unit: canonical }: Quantity, { shown }: Protocol) => {
  const unit = shownUnit(name, canonical, shown);
  return { unit, shown: (value: number) => toShown(name, unit, value) };
};

/** A unit ten times as fine needs a decimal less. */
const decimalsIn = ({ decimals }: Quantity, perCanonical: number): number =>
  Math.max(0, decimals - Math.round(Math.log10(perCanonical)));

const readingLine = (course: Course, quantity: ReadingName, sign: string): TrendLine =>
  line(sign, READINGS[quantity].short, readingSeries(course, quantity));

const line = (
  sign: string,
  name: string,
  series: readonly Measured[],
  shown: (value: number) => number = (value) => value,
): TrendLine => ({
  sign,
  name,
  points: series.map(({ at, value, until, inclusive }) => ({
    at,
    value: shown(value),
    until: inclusive ? until : until - 1,
  })),
});

function actTrend({ record, protocol }: Course): Trend {
  const { actRecheck, actForBypass } = protocol.coagulation;
  const points = ofKind(record.facts, "act").map(({ at, entry }) => ({
    at,
    value: entry.seconds,
    until: at + actRecheck.value * MINUTE,
  }));
  return {
    ...plainTrend("ACT", "s", 0, 100, [{ sign: "", name: "ACT", points }]),
    limits: [actForBypass.value],
  };
}

/** Whether anything was measured. */
export const isMeasured = ({ lines }: Trend): boolean => lines.some(({ points }) => points.length > 0);

/** The value of a line that is relied on at a moment; `null` where there is none. */
export function valueAt({ points }: TrendLine, moment: number): TrendPoint | null {
  const last = points.findLast(({ at }) => at <= moment);
  return last && moment <= last.until ? last : null;
}

/** A stretch of time in milliseconds since the epoch. */
export type TrendWindow = { readonly from: number; readonly to: number };

/** The hour up to `now`, in milliseconds since the epoch. */
export const lastHour = (now: number): TrendWindow => ({ from: now - 60 * MINUTE, to: now });

const SHORTEST = 10 * MINUTE;

/** From the first that was measured, given or begun to the last, or to `now` while bypass is on. */
export function wholeRun(course: Course, now: number): TrendWindow {
  const { spans, doses } = course;
  const ends = [...intervalsOf(spans, "bypass"), ...intervalsOf(spans, "clamp")];
  const moments = [
    ...ends.flatMap(({ from, to }) => [from, to ?? now]),
    ...doses.flatMap(({ start, end }) => [start, end ?? now]),
    ...trendsOf(course).flatMap(({ lines }) => lines.flatMap(({ points }) => endsOf(points))),
  ];
  if (moments.length === 0) return lastHour(now);
  const [from, to] = [Math.min(...moments), Math.max(...moments)];
  return { from, to: Math.max(to, from + SHORTEST) };
}

const endsOf = (points: readonly TrendPoint[]): number[] => {
  const [first, last] = [points[0], points.at(-1)];
  return first && last ? [first.at, last.at] : [];
};

/** Published quality indicators of the run. Without a value an indicator is not assessable, never met. */
import { fixed, plain } from "../format/number.ts";
import { FROM_MEMORY } from "../protocol/decision.ts";
import { ofKind } from "../record/standing.ts";
import { type Below, belowFigures, belowThreshold, type Sample, stepHold } from "./below-threshold.ts";
import { isActMet } from "./coagulation.ts";
import { type Figure, known, missing } from "./figure.ts";
import {
  gasSeries,
  haematocritSeries,
  type Measured,
  readingSeries,
  venousSaturationSeries,
} from "./measured.ts";
import { deliveryBelow } from "./oxygen-over-time.ts";
import { perfused } from "./perfused.ts";
import type { Run } from "./run.ts";
import { intervalsOf, isOnAt } from "./spans.ts";
import { urineRate } from "./urine-on-bypass.ts";

export type Verdict = "met" | "not met" | "not assessable" | "shown";

export type Indicator = {
  readonly id: string;
  readonly name: string;
  /** `shown` where the source gives a value to look at and none to reach. */
  readonly verdict: Verdict;
  readonly value: Figure;
  readonly source: string;
};

const BENCHMARKS = "Baker RA et al. J Extra Corpor Technol 2012;44:26–33";
const CRITICAL_DELIVERY =
  "threshold of 270 in adults: Newland RF et al., ANZ Collaborative Perfusion Registry";
const LOWEST_HAEMATOCRIT = "Ranucci M et al. Ann Thorac Surg 2005;80:2213–2220 (cut 26 %)";

/** Every indicator, from what was recorded on bypass up to the run's moment. */
export const indicatorsOf = (run: Run): readonly Indicator[] => [
  allWithin(run, "glucose", "glucose from 4 to 10 mmol/L", gasSeries(run.course, "glucose"), [4, 10]),
  outletAtMost37(run),
  allWithin(
    run,
    "carbon-dioxide",
    "PaCO2 from 35 to 45 mmHg",
    gasSeries(run.course, "carbonDioxide", "arterial"),
    [35, 45],
  ),
  ...delivery(run),
  lowestHaematocrit(run),
  minutesBelow(
    run,
    "pressure-below",
    `MAP below ${plain(run.course.protocol.watch.meanPressure.low)} mmHg`,
    readingSeries(run.course, "meanPressure"),
    run.course.protocol.watch.meanPressure.low,
    "mm[Hg]",
  ),
  actCompliance(run),
  minutesBelow(
    run,
    "venous-saturation-below",
    "SvO2 below 60 %",
    venousSaturationSeries(run.course),
    60,
    "%",
  ),
  lactatePeak(run),
  urine(run),
];

const onBypass = ({ course, now }: Run, series: readonly Measured[]): readonly Measured[] =>
  series.filter(({ at }) => at <= now && isOnAt(intervalsOf(course.spans, "bypass"), at));

const NONE = "no value recorded on bypass";

const judged = (value: Figure, met: boolean): Verdict =>
  value.value === null ? "not assessable" : met ? "met" : "not met";

const shown = (value: Figure): Verdict => (value.value === null ? "not assessable" : "shown");

/** Every single value has to lie within, both limits included; shown is the share of those that do. */
function allWithin(
  run: Run,
  id: string,
  name: string,
  series: readonly Measured[],
  [low, high]: readonly [number, number],
): Indicator {
  const values = onBypass(run, series).map(({ value }) => value);
  const inside = values.filter((value) => low <= value && value <= high).length;
  const value =
    values.length === 0
      ? missing("%", NONE)
      : known(
          (inside / values.length) * 100,
          "%",
          `${inside} of ${values.length} values within (${plain(Math.min(...values))} to ${plain(Math.max(...values))})`,
        );
  return { id, name, verdict: judged(value, inside === values.length), value, source: BENCHMARKS };
}

/** The registry counts 37.0 as met; the protocol's own limit may be narrower. */
function outletAtMost37(run: Run): Indicator {
  const value = extreme(run, readingSeries(run.course, "arterialTemperature"), "Cel", Math.max);
  return {
    id: "outlet",
    name: "arterial outlet at most 37 °C",
    verdict: judged(value, (value.value ?? 0) <= 37),
    value,
    source: BENCHMARKS,
  };
}

function delivery(run: Run): Indicator[] {
  const { value: threshold, source } = run.course.protocol.watch.oxygenDelivery;
  const below = deliveryBelow(run);
  const { minutes, area, lowest } = belowFigures(below, threshold, "mL/min/m2", "mL/m2");
  const limit = `DO2i below ${plain(threshold)} mL/min/m²`;
  const on = source ?? FROM_MEMORY;
  return [
    {
      id: "delivery-lowest",
      name: `lowest DO2i at least ${LOWEST_DELIVERY} mL/min/m²`,
      verdict: lowestVerdict(below),
      value: lowest,
      source: CRITICAL_DELIVERY,
    },
    {
      id: "delivery-minutes",
      name: `minutes with ${limit}`,
      verdict: shown(minutes),
      value: minutes,
      source: on,
    },
    {
      id: "delivery-area",
      name: `area of ${limit}`,
      verdict: shown(area),
      value: area,
      source: area.source ?? on,
    },
  ];
}

const LOWEST_DELIVERY = 270;

/** One low value is enough to miss it; to meet it takes values for at least half of the time on bypass. */
function lowestVerdict({ lowest, assessed, notAssessed }: Below): Verdict {
  if (lowest === null) return "not assessable";
  if (lowest < LOWEST_DELIVERY) return "not met";
  return assessed >= notAssessed ? "met" : "not assessable";
}

function lowestHaematocrit(run: Run): Indicator {
  const value = extreme(run, haematocritSeries(run.course), "%", Math.min);
  return {
    id: "haematocrit-lowest",
    name: "lowest haematocrit",
    verdict: shown(value),
    value,
    source: LOWEST_HAEMATOCRIT,
  };
}

function minutesBelow(
  run: Run,
  id: string,
  name: string,
  series: readonly Sample[],
  threshold: number,
  unit: string,
): Indicator {
  const below: Below = belowThreshold(stepHold(series), threshold, perfused(run.course.spans), run.now);
  const { minutes } = belowFigures(below, threshold, unit, `${unit}.min`);
  return { id, name: `minutes with ${name}`, verdict: shown(minutes), value: minutes, source: FROM_MEMORY };
}

/** The share of the ACTs on bypass that were at or above the target. */
function actCompliance(run: Run): Indicator {
  const { value: target, source } = run.course.protocol.coagulation.actForBypass;
  const acts = ofKind(run.course.record.facts, "act").filter(
    ({ at }) => at <= run.now && isOnAt(intervalsOf(run.course.spans, "bypass"), at),
  );
  const met = acts.filter(({ entry }) => isActMet(entry.seconds, target)).length;
  const value =
    acts.length === 0
      ? missing("%", "no ACT recorded on bypass")
      : known((met / acts.length) * 100, "%", `${met} of ${acts.length} at or above ${fixed(target)} s`);
  return {
    id: "act",
    name: "every ACT on bypass at its target",
    verdict: judged(value, met === acts.length),
    value,
    source: source ?? FROM_MEMORY,
  };
}

function lactatePeak(run: Run): Indicator {
  const value = extreme(run, gasSeries(run.course, "lactate"), "mmol/L", Math.max);
  return { id: "lactate", name: "highest lactate", verdict: shown(value), value, source: FROM_MEMORY };
}

function urine(run: Run): Indicator {
  const value = urineRate(run);
  return { id: "urine", name: "urine on bypass", verdict: shown(value), value, source: FROM_MEMORY };
}

function extreme(
  run: Run,
  series: readonly Measured[],
  unit: string,
  pick: (...values: number[]) => number,
): Figure {
  const values = onBypass(run, series).map(({ value }) => value);
  return values.length === 0
    ? missing(unit, NONE)
    : known(
        pick(...values),
        unit,
        `of ${values.length} ${values.length === 1 ? "value" : "values"} on bypass`,
      );
}

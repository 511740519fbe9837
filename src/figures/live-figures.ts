/** The figures of the live panel, put together: everything that follows from the latest readings and the clock. */

import { belowFigures } from "./below-threshold.ts";
import { surfaceOf } from "./body-surface.ts";
import { type Figure, known, missing } from "./figure.ts";
import { type Ischaemia, ischaemiaOf } from "./ischaemia.ts";
import { type LiveOxygen, liveOxygen, recent } from "./live-oxygen.ts";
import { latestReading, type Moment } from "./measured.ts";
import { deliveryBelow } from "./oxygen-over-time.ts";
import type { Run } from "./run.ts";
import { type Gradient, gradientOf, minutesToTarget, warmingRate } from "./temperatures.ts";
import { urineRate } from "./urine-on-bypass.ts";
import { systemicResistance, systemicResistanceIndex } from "./vascular.ts";

type LiveFigures = LiveOxygen & {
  /** SVR, dyn·s·cm⁻⁵ */
  readonly resistance: Figure;
  /** SVRI, dyn·s·cm⁻⁵·m² */
  readonly resistanceIndex: Figure;
  readonly gradient: Gradient;
  /** K/min; below nought the patient cools. */
  readonly warmingRate: Figure;
  readonly minutesToTarget: Figure;
  /** Minutes on bypass with DO2i below the protocol's threshold, and mL/m² below it. */
  readonly deliveryBelowMinutes: Figure;
  readonly deliveryBelowArea: Figure;
  readonly deliveryLowest: Figure;
  /** Seconds since the last heparin. */
  readonly heparinAge: Figure;
  /** mL/kg/h on bypass. */
  readonly urineRate: Figure;
  /** By route, the longest first; empty while no clamp is on. */
  readonly ischaemia: readonly Ischaemia[];
};

/** All of them at the run's moment; a value that is too old is not used, and the figure says which. */
export function liveFigures(run: Run): LiveFigures {
  const threshold = run.course.protocol.watch.oxygenDelivery.value;
  const resistance = resistanceOf(run);
  const below = belowFigures(deliveryBelow(run), threshold, "mL/min/m2", "mL/m2");
  return {
    ...liveOxygen(run),
    resistance,
    resistanceIndex: systemicResistanceIndex(resistance, surfaceOf(run.course)),
    gradient: gradientOf(run),
    warmingRate: warmingRate(run),
    minutesToTarget: minutesToTarget(run),
    deliveryBelowMinutes: below.minutes,
    deliveryBelowArea: below.area,
    deliveryLowest: below.lowest,
    heparinAge: heparinAge(run),
    urineRate: urineRate(run),
    ischaemia: ischaemiaOf(run),
  };
}

/** SVR in dyn·s·cm⁻⁵ from pressures and flow that hold; never with a venous pressure that nobody read. */
const resistanceOf = (moment: Moment): Figure =>
  systemicResistance(
    recent(latestReading(moment, "meanPressure"), "mm[Hg]", "mean arterial pressure"),
    recent(latestReading(moment, "centralVenousPressure"), "mm[Hg]", "central venous pressure"),
    recent(latestReading(moment, "flow"), "L/min", "pump flow"),
  );

const heparinAge = ({ coagulation }: Run): Figure =>
  coagulation.heparinAge === null
    ? missing("s", "no heparin recorded")
    : known(Math.floor(coagulation.heparinAge / 1000), "s", "since the last heparin");

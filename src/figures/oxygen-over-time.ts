/** Oxygen delivery over the run: what it was from one reading or gas to the next, as long as all parts were relied on. */
import { lately } from "../format/lately.ts";
import { type Below, belowThreshold, type Held, stepHold } from "./below-threshold.ts";
import { surfaceOf } from "./body-surface.ts";
import { flowIndexOf } from "./flow-plan.ts";
import { contentOf } from "./live-oxygen.ts";
import {
  arterialSaturationSeries,
  gasSeries,
  haemoglobinSeries,
  type Moment,
  readingSeries,
} from "./measured.ts";
import { oxygenDeliveryIndex } from "./oxygen.ts";
import { perfused } from "./perfused.ts";
import type { Course } from "./run.ts";

/** DO2i in mL/min/m² as it held, in the order of time; where a part was missing or too old there is nothing. */
export const deliveryOverTime = lately((course: Course): readonly Held[] => {
  const surface = surfaceOf(course);
  const series = [
    stepHold(haemoglobinSeries(course)),
    stepHold(arterialSaturationSeries(course)),
    stepHold(gasSeries(course, "oxygen", "arterial")),
    stepHold(readingSeries(course, "flow")),
  ] as const;
  const changes = series.flatMap((held) => held.flatMap(({ from, to }) => [from, to]));
  const moments = [...new Set(changes)].sort((a, b) => a - b);
  const [haemoglobin, saturation, oxygen, flow] = series.map(goingForward);
  const deliveryAt = (moment: number): number | null => {
    const part = (held: typeof flow, unit: string) => ({
      value: held?.(moment) ?? null,
      unit,
      working: "",
    });
    const content = contentOf(
      part(haemoglobin, "g/dL"),
      part(saturation, "%"),
      part(oxygen, "mm[Hg]"),
      course.protocol,
      "arterial",
    );
    return oxygenDeliveryIndex(content, flowIndexOf(part(flow, "L/min"), surface)).value;
  };
  return moments.flatMap((from, i) => {
    const [to, value] = [moments[i + 1], deliveryAt(from)];
    return to === undefined || value === null ? [] : [{ from, to, value }];
  });
});

/** Tells what held at one moment after the other, each no earlier than the one before, in one pass; `null` for nothing. */
function goingForward(held: readonly Held[]): (moment: number) => number | null {
  let place = 0;
  return (moment) => {
    while ((held[place]?.to ?? Number.POSITIVE_INFINITY) <= moment) place += 1;
    const here = held[place];
    return here !== undefined && here.from <= moment ? here.value : null;
  };
}

/** Minutes on bypass below the protocol's DO2i, and mL/m² below it. */
export function deliveryBelow({ course, now }: Moment): Below {
  const threshold = course.protocol.watch.oxygenDelivery.value;
  return belowThreshold(deliveryOverTime(course), threshold, perfused(course.spans), now);
}

/** Oxygen delivery over the run: what it was from one reading or gas to the next, as long as all parts were relied on. */
import { type Below, belowThreshold, type Held, stepHold } from "./below-threshold.ts";
import { contentOf, indexOf, surfaceOf } from "./live-oxygen.ts";
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

const reckoned = new WeakMap<Course, readonly Held[]>();

/** DO2i in mL/min/m² as it held, in the order of time; where a part was missing or too old there is nothing. */
export function deliveryOverTime(course: Course): readonly Held[] {
  const before = reckoned.get(course);
  if (before) return before;
  const surface = surfaceOf(course);
  const parts = {
    flow: stepHold(readingSeries(course, "flow")),
    haemoglobin: stepHold(haemoglobinSeries(course)),
    saturation: stepHold(arterialSaturationSeries(course)),
    oxygen: stepHold(gasSeries(course, "oxygen", "arterial")),
  };
  const deliveryAt = (moment: number): number | null => {
    const part = (held: readonly Held[], unit: string) => {
      const value = held.find(({ from, to }) => from <= moment && moment < to)?.value ?? null;
      return { value, unit, working: "" };
    };
    const content = contentOf(
      part(parts.haemoglobin, "g/dL"),
      part(parts.saturation, "%"),
      part(parts.oxygen, "mm[Hg]"),
      course.protocol,
      "arterial",
    );
    return oxygenDeliveryIndex(content, indexOf(part(parts.flow, "L/min"), surface)).value;
  };
  const changes = Object.values(parts)
    .flat()
    .flatMap(({ from, to }) => [from, to]);
  const moments = [...new Set(changes)].sort((a, b) => a - b);
  const held = moments.flatMap((from, i) => {
    const [to, value] = [moments[i + 1], deliveryAt(from)];
    return to === undefined || value === null ? [] : [{ from, to, value }];
  });
  reckoned.set(course, held);
  return held;
}

/** Minutes on bypass below the protocol's DO2i, and mL/m² below it. */
export function deliveryBelow({ course, now }: Moment): Below {
  const threshold = course.protocol.watch.oxygenDelivery.value;
  return belowThreshold(deliveryOverTime(course), threshold, perfused(course.spans), now);
}

/** Urine made on bypass, by weight and time. */

import { HOUR } from "../format/duration.ts";
import { lately } from "../format/lately.ts";
import { weightOf } from "./body.ts";
import { type Figure, known, missing } from "./figure.ts";
import type { Moment } from "./measured.ts";
import type { Course } from "./run.ts";
import { intervalsOf, isOnAt, total } from "./spans.ts";
import { urinePerKgPerHour } from "./urine.ts";
import type { Volume } from "./volumes.ts";

/** The urine recorded on bypass, in the order of happening. */
export const urineOnBypass = lately(({ volumes, spans }: Course): readonly Volume[] =>
  volumes.filter(
    ({ fact: { entry, at } }) =>
      entry.direction === "out" && entry.fluid === "urine" && isOnAt(intervalsOf(spans, "bypass"), at),
  ),
);

/**
 * mL/kg/h over the time on bypass until the last urine was recorded: what came since then nobody knows. A bag that is
 * read for the first time on bypass holds urine from before it, so counting begins at that reading.
 */
export function urineRate({ course, now }: Moment): Figure {
  const urine = urineOnBypass(course).filter(({ fact }) => fact.at <= now);
  const bypass = intervalsOf(course.spans, "bypass");
  const last = urine.at(-1);
  const [begun, first] = [bypass[0], urine[0]];
  if (!begun || !first || !last) return missing("mL/kg/h", "no urine recorded on bypass");
  const baseline = isFirstReading(first, course.volumes) ? first : undefined;
  const ml = urine.reduce((sum, volume) => sum + (volume === baseline ? 0 : volume.ml), 0);
  const lasted = total(bypass, last.fact.at) - (baseline ? total(bypass, baseline.fact.at) : 0);
  const hours = known(lasted / HOUR, "h", "time on bypass until the last urine recorded");
  return urinePerKgPerHour(known(ml, "mL", "urine on bypass"), weightOf(course.patient), hours);
}

/** Whether it is a reading of the bag with no urine recorded before it. */
const isFirstReading = (volume: Volume, volumes: readonly Volume[]): boolean =>
  volume.fact.entry.bagTotal !== undefined &&
  volumes.find(({ fact: { entry } }) => entry.direction === "out" && entry.fluid === "urine") === volume;

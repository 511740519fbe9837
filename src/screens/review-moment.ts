/** A moment of a case in words: what every measured quantity was, and how long bypass and clamp had been on. */
import type { Course } from "../figures/run.ts";
import { intervalsOf, isOnAt, total } from "../figures/spans.ts";
import { isMeasured, type Trend, valueAt } from "../figures/trends.ts";
import { minutesText, stopwatch } from "../format/duration.ts";
import { fixed, UNKNOWN } from "../format/number.ts";
import { unitText } from "../format/unit.ts";

export type ValueAt = {
  readonly name: string;
  /** With its unit; a dash where nothing is relied on. */
  readonly text: string;
  /** How old it was; empty where nothing is relied on. */
  readonly age: string;
};

/** The value that was relied on at a moment, for every quantity that was ever measured in the case. */
export const valuesAt = (trends: readonly Trend[], moment: number): readonly ValueAt[] =>
  trends.filter(isMeasured).flatMap(({ lines, unit, decimals }) =>
    lines
      .filter(({ points }) => points.length > 0)
      .map((line): ValueAt => {
        const point = valueAt(line, moment);
        return {
          name: line.name,
          text: `${fixed(point?.value ?? null, decimals)} ${unitText(unit)}`.trim(),
          age: point ? minutesText(moment - point.at) : "",
        };
      }),
  );

/** How long bypass and clamp had been on by a moment, and whether they were on. */
export const clocksAt = ({ spans }: Course, moment: number): string =>
  (["bypass", "clamp"] as const)
    .map((what) => {
      const begun = intervalsOf(spans, what).filter(({ from }) => from <= moment);
      if (begun.length === 0) return `${what} ${UNKNOWN}`;
      return `${what} ${isOnAt(begun, moment) ? "on" : "off"} ${stopwatch(total(begun, moment))}`;
    })
    .join(" · ");

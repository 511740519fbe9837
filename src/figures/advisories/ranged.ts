/** Advisories that a value lies below or above its range: two of them for each quantity that has one. */
import { shownUnit, toShown } from "../conversions.ts";
import type { Latest } from "../measured.ts";
import type { Run } from "../run.ts";
import { type Advisory, against, broughtBy, isAbove, isBelow, type Priority } from "./advisory.ts";

type Range = { readonly low: number; readonly high: number; readonly source?: string | undefined };

type Ranged = {
  /** Of the two advisories: `glucose` makes `glucose-low` and `glucose-high`. */
  readonly id: string;
  readonly name: string;
  /** The quantity's name in the record, where the protocol may show it in another unit. */
  readonly quantity: string;
  /** UCUM code of the record's unit. */
  readonly unit: string;
  readonly decimals: number;
  readonly priority: Priority;
  /** Of the range, under `watch` in the protocol. */
  readonly watched: "meanPressure" | "glucose" | "potassium" | "carbonDioxide";
  /** The value to look at; `null` where there is none, or where the range says nothing now. */
  latest(run: Run): Latest | null;
};

/** Silent at both limits. */
export function ranged(rule: Ranged): readonly Advisory[] {
  const one = (side: "low" | "high", isOut: (value: number, range: Range) => boolean): Advisory => ({
    id: `${rule.id}-${side}`,
    reads: [`watch.${rule.watched}`],
    says(run) {
      const latest = rule.latest(run);
      const range = run.course.protocol.watch[rule.watched];
      if (!latest?.holds || !isOut(latest.value, range)) return null;
      const unit = shownUnit(rule.quantity, rule.unit, run.course.protocol.shown);
      const [value, limit] = [latest.value, range[side]].map((it) => toShown(rule.quantity, unit, it));
      const decimals = unit === rule.unit ? rule.decimals : unit === "kPa" ? 1 : 0;
      return {
        text: `${against(rule.name, value as number, limit as number, unit, decimals)}.`,
        source: range.source,
        priority: rule.priority,
        ...broughtBy(latest),
      };
    },
  });
  return [
    one("low", (value, { low }) => isBelow(value, low)),
    one("high", (value, { high }) => isAbove(value, high)),
  ];
}

/** What an advisory is, and the words and comparisons that all of them share. */
import { fixed, plain } from "../../format/number.ts";
import { unitText } from "../../format/unit.ts";
import type { Fact } from "../../record/standing.ts";
import type { Latest } from "../measured.ts";
import { liesIn, perfused } from "../perfused.ts";
import type { Run } from "../run.ts";
import { type Interval, intervalsOf, openInterval } from "../spans.ts";

export const PRIORITIES = ["high", "medium", "low"] as const;
export type Priority = (typeof PRIORITIES)[number];

export type Said = {
  /** One sentence: what, and the number against the limit. */
  readonly text: string;
  /** On whose word the limit stands. */
  readonly source?: string | undefined;
  readonly priority: Priority;
  /** The moment from which it stands, in milliseconds since the epoch. */
  readonly since: number;
  /** The last entry that brought it about, by its number; nought where only time did. */
  readonly after: number;
};

export type Advisory = {
  readonly id: string;
  /** The protocol's values it reads, as paths: `watch.meanPressure`. */
  readonly reads: readonly string[];
  /** What it says of a run; `null` when there is nothing to say, or nothing known to say it from. */
  says(run: Run): Said | null;
};

/** Binary fractions make 34.1 − 30.1 a hair more than 4: what lies closer together than this is the same. */
const HAIR = 1e-9;

/** Beyond a limit by more than binary fractions account for. */
export const isAbove = (value: number, limit: number): boolean => value - limit > HAIR;
export const isBelow = (value: number, limit: number): boolean => limit - value > HAIR;

/** `MAP 49 mmHg is below 50 mmHg`, with as many decimals as tell the two apart. */
export function against(name: string, value: number, limit: number, unit: string, decimals = 0): string {
  const side = value < limit ? "below" : "above";
  const [says, bound] = toldApart(value, limit, decimals);
  return `${name} ${says} ${unitText(unit)} is ${side} ${bound} ${unitText(unit)}`;
}

/** Value and limit rounded alike, to two decimals more than usual where fewer would make them read the same. */
export function toldApart(value: number, limit: number, decimals: number): readonly [string, string] {
  const enough = [decimals, decimals + 1].find((n) => fixed(value, n) !== fixed(limit, n)) ?? decimals + 2;
  return [fixed(value, enough), plain(Number(fixed(limit, enough)))];
}

/** The bypass that is on. */
export const bypassOn = ({ course }: Run): Interval | undefined =>
  openInterval(intervalsOf(course.spans, "bypass"));

/** Whether the pump perfuses the whole body now, so that limits for it mean something. */
export const bodyPerfused = ({ course, now }: Run): boolean => liesIn(perfused(course.spans), now);

/** The number of the last entry that made these what they are, corrections among them. */
export const lastNumber = (...facts: readonly (Fact | undefined)[]): number =>
  Math.max(
    0,
    ...facts.flatMap((fact) => (fact ? [fact.entry.seq, ...fact.corrections.map(({ seq }) => seq)] : [])),
  );

/** Since when, and after which entry, something measured stands. */
export const broughtBy = ({ at, fact }: Latest) => ({ since: at, after: lastNumber(fact) });

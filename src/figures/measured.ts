/** What was measured: the series of a quantity, its latest value, and how long a value is relied on. */

import { MINUTE, minutesText } from "../format/duration.ts";
import { lately } from "../format/lately.ts";
import type { EntryOf } from "../record/entry.ts";
import { GAS_VALUES, type GasName, READINGS, type ReadingName } from "../record/quantities.ts";
import { type Fact, lastOf, ofKind } from "../record/standing.ts";
import { litresOf } from "./phase.ts";
import type { Course } from "./run.ts";
import { intervalsOf } from "./spans.ts";

export type Measured = {
  /** When it was measured, in milliseconds since the epoch. */
  readonly at: number;
  /** In the unit of the record. */
  readonly value: number;
  /** What it is, in words: `pump flow`, `arterial pCO2`. */
  readonly name: string;
  readonly fact: Fact<EntryOf<"readings">> | Fact<EntryOf<"gas">>;
  /** Until when it is relied on. */
  readonly until: number;
  /** Whether that moment itself still belongs: yes where it grows old, no where something happened then. */
  readonly inclusive: boolean;
  /** Why it is not relied on after that. */
  readonly ends: string;
};

export type Latest = Measured & {
  /** Milliseconds. */
  readonly age: number;
  /** Whether it is still relied on. */
  readonly holds: boolean;
};

/** A course, and the moment for which it is asked. */
export type Moment = { readonly course: Course; readonly now: number };

export type Sample = EntryOf<"gas">["sample"];

/** Every value of a reading, in the order of happening. */
export const readingSeries = (course: Course, name: ReadingName): readonly Measured[] =>
  once(course, name, () =>
    ofKind(course.record.facts, "readings").flatMap((fact) => readingIn(course, fact, name) ?? []),
  );

/** Every value of a gas quantity, of arterial or venous samples or of both, in the order of happening. */
export const gasSeries = (course: Course, name: GasName, sample?: Sample): readonly Measured[] =>
  once(course, `${sample ?? "any"} gas ${name}`, () =>
    ofKind(course.record.facts, "gas").flatMap((fact) => gasIn(course, fact, name, sample) ?? []),
  );

function readingIn(course: Course, fact: Fact<EntryOf<"readings">>, name: ReadingName): Measured | null {
  const value = fact.entry.values[name];
  if (value === undefined) return null;
  return { at: fact.at, value, name: READINGS[name].name, fact, ...relied(course, fact, name, value) };
}

function gasIn(course: Course, fact: Fact<EntryOf<"gas">>, name: GasName, sample?: Sample): Measured | null {
  const value = fact.entry.values[name];
  if (value === undefined || (sample !== undefined && fact.entry.sample !== sample)) return null;
  const words = sample === undefined ? GAS_VALUES[name].name : `${sample} ${GAS_VALUES[name].name}`;
  return { at: fact.at, value, name: words, fact, ...reliedGas(course, fact) };
}

const known = lately((_course: Course) => new Map<string, readonly Measured[]>());

/** The screen asks for the same series many times a second, and they change only with the record. */
function once(course: Course, key: string, read: () => readonly Measured[]): readonly Measured[] {
  const ofCourse = known(course);
  const series = ofCourse.get(key) ?? read();
  ofCourse.set(key, series);
  return series;
}

/** The last of a series with its age at `now`; `null` when there is none. */
export const latestOf = (series: readonly Measured[], now: number): Latest | null =>
  latest(series.at(-1), now);

const latest = (last: Measured | null | undefined, now: number): Latest | null =>
  last
    ? {
        ...last,
        age: Math.max(0, now - last.at),
        holds: last.inclusive ? now <= last.until : now < last.until,
      }
    : null;

/** Asked for at every tick and after every entry, so the series before it is not made for it. */
export function latestReading({ course, now }: Moment, name: ReadingName): Latest | null {
  const readings = ofKind(course.record.facts, "readings");
  const fact = readings.findLast(({ entry }) => entry.values[name] !== undefined);
  return latest(fact && readingIn(course, fact, name), now);
}

/** The last of a gas quantity with its age, of arterial or venous samples or of both; `null` when there is none. */
export function latestGas({ course, now }: Moment, name: GasName, sample?: Sample): Latest | null {
  const gases = ofKind(course.record.facts, "gas");
  const fact = gases.findLast((one) => gasIn(course, one, name, sample) !== null);
  return latest(fact && gasIn(course, fact, name, sample), now);
}

/** When the last readings or the last gas were taken, whatever was in them; `null` when none were. */
export const latestMoment = ({ record }: Course, kind: "readings" | "gas"): number | null =>
  lastOf(record.facts, kind)?.at ?? null;

/** Haemoglobin in g/dL, of either sample. */
export const haemoglobinSeries = (course: Course): readonly Measured[] => gasSeries(course, "haemoglobin");

/** Haematocrit in %, of either sample or in line. */
export const haematocritSeries = (course: Course): readonly Measured[] =>
  inOrder(gasSeries(course, "haematocrit"), readingSeries(course, "haematocrit"));

/** Arterial saturation in %, of arterial samples. */
export const arterialSaturationSeries = (course: Course): readonly Measured[] =>
  gasSeries(course, "saturation", "arterial");

/** Venous saturation in %, of venous samples or in line. */
export const venousSaturationSeries = (course: Course): readonly Measured[] =>
  inOrder(gasSeries(course, "saturation", "venous"), readingSeries(course, "venousSaturation"));

/** Why a value is not used: nothing recorded, or what made it too old. */
export const whyNot = (latest: Latest | null, name: string): string =>
  latest === null ? `no ${name} recorded` : `${latest.name} ${latest.ends} (${minutesText(latest.age)})`;

const inOrder = (...series: (readonly Measured[])[]): readonly Measured[] =>
  series.flat().sort((a, b) => a.at - b.at || a.fact.entry.seq - b.fact.entry.seq);

type Relied = Pick<Measured, "until" | "inclusive" | "ends">;

const grownOld = ({ at }: Fact, minutes: number): Relied => ({
  until: at + minutes * MINUTE,
  inclusive: true,
  ends: "is too old",
});

const ended = (until: number, ends: string): Relied => ({ until, inclusive: false, ends });

const first = (...all: (Relied | null)[]): Relied =>
  all.filter((one) => one !== null).reduce((earliest, one) => (one.until < earliest.until ? one : earliest));

/** Temperatures of the patient, which going on or off bypass does not change at once. */
const OF_THE_BODY: readonly ReadingName[] = [
  "nasopharyngealTemperature",
  "bladderTemperature",
  "rectalTemperature",
];

/**
 * A reading is relied on for as long as the protocol says, but not past going on or off bypass (a patient's own
 * temperature apart), and a flow not past an order of clearly (by a tenth) another flow.
 */
function relied(course: Course, fact: Fact, name: ReadingName, value: number): Relied {
  return first(
    grownOld(fact, course.protocol.watch.readingsHold.value),
    OF_THE_BODY.includes(name) ? null : bypassChange(course, fact.at),
    name === "flow" ? otherOrder(course, fact.at, value) : null,
  );
}

/** A gas is relied on for as long as the protocol says, but one from before bypass not once the prime is mixed in. */
function reliedGas(course: Course, fact: Fact): Relied {
  const begun = intervalsOf(course.spans, "bypass")[0]?.from;
  return first(
    grownOld(fact, course.protocol.watch.gasHold.value),
    begun !== undefined && fact.at < begun ? ended(begun, "is from before bypass") : null,
  );
}

function bypassChange({ spans }: Course, at: number): Relied | null {
  const changes = intervalsOf(spans, "bypass").flatMap(({ from, to }) => [from, to ?? Number.NaN]);
  const next = changes.find((change) => change > at);
  return next === undefined ? null : ended(next, "is from before bypass went on or off");
}

function otherOrder(course: Course, at: number, litres: number): Relied | null {
  const orders = ofKind(course.record.facts, "flow");
  for (let place = firstAfter(orders, at); place < orders.length; place++) {
    const order = orders[place] as Fact<EntryOf<"flow">>;
    const ordered = litresOf(order.entry, course.fullFlow.value);
    if (ordered === null || Math.abs(ordered - litres) > 0.1 * litres)
      return ended(order.at, "is from before another flow was ordered");
  }
  return null;
}

/** The place of the first fact that happened after a moment, in a list in the order of happening. */
function firstAfter(facts: readonly Fact[], at: number): number {
  let [low, high] = [0, facts.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((facts[middle] as Fact).at <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

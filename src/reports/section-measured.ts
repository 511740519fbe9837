/** What was measured: the lowest and highest of everything on bypass, and all readings and gases. */

import { within } from "../figures/below-threshold.ts";
import { gasSeries, type Measured, readingSeries } from "../figures/measured.ts";
import { deliveryOverTime } from "../figures/oxygen-over-time.ts";
import { perfused } from "../figures/perfused.ts";
import { intervalsOf, isOnAt } from "../figures/spans.ts";
import { fixed } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { GAS_VALUES, type GasName, type Quantity, READINGS, type ReadingName } from "../record/quantities.ts";
import { type Fact, ofKind } from "../record/standing.ts";
import { type Row, type Section, type Table, table } from "./blocks.ts";
import { clockOf, type Report } from "./report.ts";
import { type ShownQuantity, shownQuantity, withUnit } from "./shown-values.ts";

/** The lowest and the highest of each quantity on bypass, with their times. */
export function extremesSection(report: Report): Section {
  const { course } = report.run;
  const rows = [
    ...keysOf(READINGS).flatMap((key) =>
      extremesRow(report, shownReading(report, key), readingSeries(course, key)),
    ),
    ...keysOf(GAS_VALUES).flatMap((key) =>
      extremesRow(report, shownGas(report, key), gasSeries(course, key)),
    ),
    ...deliveryRow(report),
  ];
  return {
    id: "extremes",
    title: "Lowest and highest on bypass",
    blocks: [
      table(
        "Of everything measured on bypass",
        ["What", ">Lowest", ">At", ">Highest", ">At", ">Values"],
        rows,
        "Nothing was measured on bypass.",
      ),
    ],
  };
}

const keysOf = <N extends string>(of: Readonly<Record<N, Quantity>>) => Object.keys(of) as N[];

const shownReading = ({ file }: Report, key: ReadingName) =>
  shownQuantity(key, READINGS[key], file.protocol.shown);
const shownGas = ({ file }: Report, key: GasName) => shownQuantity(key, GAS_VALUES[key], file.protocol.shown);

type At = { readonly at: number; readonly value: number };

function extremesRow(report: Report, quantity: ShownQuantity, series: readonly Measured[]): Row[] {
  const bypass = intervalsOf(report.run.course.spans, "bypass");
  return rowOf(
    report,
    quantity,
    series.filter(({ at }) => isOnAt(bypass, at)),
  );
}

function rowOf(report: Report, quantity: ShownQuantity, values: readonly At[]): Row[] {
  const first = values[0];
  if (!first) return [];
  const lowest = values.reduce((low, one) => (one.value < low.value ? one : low), first);
  const highest = values.reduce((high, one) => (one.value > high.value ? one : high), first);
  const told = ({ at, value }: At) => [quantity.write(value), clockOf(report, at)];
  return [{ cells: [withUnit(quantity), ...told(lowest), ...told(highest), String(values.length)] }];
}

/** Oxygen delivery as it held while the whole body was perfused. */
function deliveryRow(report: Report): Row[] {
  const { course, now } = report.run;
  const held = within(deliveryOverTime(course), perfused(course.spans), now);
  const quantity = {
    name: "DO2i",
    unit: unitText("mL/min/m2"),
    write: (value: number | null) => fixed(value),
  };
  return rowOf(
    report,
    quantity,
    held.map(({ from, value }) => ({ at: from, value })),
  );
}

/** All readings and all gases, a column a moment. */
export function measuredSection(report: Report): Section {
  const { facts } = report.run.course.record;
  const readings = ofKind(facts, "readings");
  const gases = ofKind(facts, "gas");
  const samples = gases.map(({ entry }) => (entry.sample === "arterial" ? "art" : "ven"));
  return {
    id: "measured",
    title: "Readings and gases",
    blocks: [
      wideTable(
        "Readings",
        readings.map(({ at }) => clockOf(report, at).slice(0, -3)),
        keysOf(READINGS).map((key) => [shownReading(report, key), valuesOf(readings, key)]),
      ),
      wideTable(
        "Blood gases and laboratory values (art: arterial, ven: venous)",
        gases.map(({ at }, i) => `${clockOf(report, at).slice(0, -3)} ${samples[i]}`),
        keysOf(GAS_VALUES).map((key) => [shownGas(report, key), valuesOf(gases, key)]),
      ),
    ],
  };
}

const valuesOf = (facts: readonly Pick<Fact, "entry">[], key: string): (number | null)[] =>
  facts.map(({ entry }) => {
    const value = (entry as { values?: { readonly [name: string]: unknown } }).values?.[key];
    return typeof value === "number" ? value : null;
  });

/** A row a quantity that was ever measured; an empty cell where it was not that time. */
function wideTable(
  caption: string,
  moments: readonly string[],
  quantities: readonly (readonly [ShownQuantity, readonly (number | null)[]])[],
): Table {
  const rows = quantities
    .filter(([, values]) => values.some((value) => value !== null))
    .map(([quantity, values]) => [
      withUnit(quantity),
      ...values.map((value) => (value === null ? "" : quantity.write(value))),
    ]);
  const columns = ["What", ...moments.map((moment) => `>${moment}`)];
  return { ...table(caption, columns, rows, "None recorded."), isWide: true };
}

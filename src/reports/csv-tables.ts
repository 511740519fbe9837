/** A case as tidy tables: a row an entry, a row a set of readings or a sample, a row a figure. Units are UCUM codes. */
import { entryWords, standsText } from "../figures/entry-words.ts";
import { intervalsOf } from "../figures/spans.ts";
import { toIso } from "../format/instant.ts";
import type { Entry } from "../record/entry.ts";
import { GAS_VALUES, type Quantity, READINGS } from "../record/quantities.ts";
import type { Cell, CsvTable } from "./csv.ts";
import { figureWords } from "./figure-words.ts";
import { figuresOf } from "./figures.ts";
import type { CsvTableName } from "./formats.ts";
import type { Report } from "./report.ts";

/** The table of that name, with its heads. */
export function csvTable(report: Report, name: CsvTableName): CsvTable {
  switch (name) {
    case "entries":
      return entriesTable(report);
    case "readings":
      return readingsTable(report);
    case "figures":
      return figuresTable(report);
    default:
      return name satisfies never;
  }
}

const ENTRY_COLUMNS = [
  ...["case", "number", "happened", "written", "by", "kind", "subject", "says", "note", "typed"],
  ...["stands", "corrects", "volume (mL)", "ACT (s)", "amount", "unit of the amount (UCUM)"],
];

/** In the order of writing, corrections and what was struck out among them. */
const entriesTable = ({ file, run }: Report): CsvTable => ({
  name: "entries",
  columns: ENTRY_COLUMNS,
  rows: run.course.record.written.map((fact) => {
    const { entry } = fact;
    const { subject, says } = entryWords(entry, file.protocol);
    return [
      ...[file.id, entry.seq, entry.at, entry.loggedAt, entry.by, entry.kind, subject, says],
      ...[entry.note ?? null, entry.typed || null, standsText(fact)],
      ...numbersOf(entry),
    ];
  }),
});

function numbersOf(entry: Entry): Cell[] {
  const corrects = entry.kind === "amend" || entry.kind === "void" ? Number(entry.target.slice(1)) : null;
  const hasVolume = entry.kind === "dose" || entry.kind === "volume" || entry.kind === "level";
  return [
    corrects,
    hasVolume ? (entry.ml ?? null) : null,
    entry.kind === "act" ? entry.seconds : null,
    entry.kind === "drug" ? entry.amount : null,
    entry.kind === "drug" ? entry.unit : null,
  ];
}

const withUcum = (quantities: Readonly<Record<string, Quantity>>): string[] =>
  Object.values(quantities).map(({ name, unit }) => `${name} (${unit})`);

const READING_COLUMNS = [
  ...["case", "number", "happened", "since bypass first went on (min)", "source", "temperature convention"],
  ...withUcum(READINGS),
  ...Object.values(GAS_VALUES).map(({ name, unit }) => `sample: ${name} (${unit})`),
  "ACT (s)",
];

/** What stands, in the order of happening; an empty cell was not measured then. */
function readingsTable({ file, run }: Report): CsvTable {
  const begun = intervalsOf(run.course.spans, "bypass")[0]?.from;
  return {
    name: "readings",
    columns: READING_COLUMNS,
    rows: run.course.record.facts.flatMap(({ entry, at }) => {
      const measured = measuredIn(entry);
      if (measured === null) return [];
      const since = begun === undefined ? null : Math.round((at - begun) / 600) / 100;
      return [[file.id, entry.seq, entry.at, since, ...measured]];
    }),
  };
}

function measuredIn(entry: Entry): Cell[] | null {
  switch (entry.kind) {
    case "readings":
      return ["readings", null, ...valuesOf(entry.values, READINGS), ...valuesOf({}, GAS_VALUES), null];
    case "gas":
      return [
        ...[`${entry.sample} gas`, entry.convention ?? null],
        ...[...valuesOf({}, READINGS), ...valuesOf(entry.values, GAS_VALUES), null],
      ];
    case "act":
      return ["ACT", null, ...valuesOf({}, READINGS), ...valuesOf({}, GAS_VALUES), entry.seconds];
    default:
      return null;
  }
}

const valuesOf = (
  values: { readonly [name: string]: unknown },
  quantities: Readonly<Record<string, Quantity>>,
): Cell[] =>
  Object.keys(quantities).map((key) => {
    const value = Object.hasOwn(values, key) ? values[key] : null;
    return typeof value === "number" ? value : null;
  });

/** An empty value is not known, and `from` says what it lacks. */
function figuresTable({ file, run, at }: Report): CsvTable {
  const moment = toIso({ ms: run.now, offset: at.offset });
  return {
    name: "figures",
    columns: ["case", "at", "figure", "name", "value", "unit of the value (UCUM)", "from", "source"],
    rows: figuresOf(file, at).map(({ name, value, unit, working, source }) => [
      ...[file.id, moment, name, figureWords(name).label, value, unit, working, source ?? null],
    ]),
  };
}

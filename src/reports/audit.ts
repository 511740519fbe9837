/** A department's figures: what many cases say together. Unknown is not zero, and what is damaged is named. */
import type { CaseSummary } from "./case-summary.ts";
import { dayIn, type Told } from "./choose-cases.ts";
import { JUDGED_IDS, type JudgedId, MANY_FIGURE_NAMES, type ManyFigureName } from "./many-words.ts";
import { type Quartiles, quartilesOf } from "./quartiles.ts";

export type Spread = {
  readonly name: ManyFigureName;
  readonly known: number;
  readonly unknown: number;
  /** `null` where no case has the figure. */
  readonly quartiles: Quartiles | null;
};

export type Rate = {
  readonly met: number;
  readonly notMet: number;
  readonly notAssessable: number;
  /** Percent of the cases that could be assessed; `null` where none could. */
  readonly percent: number | null;
};

/** What a number of cases say. */
export type Group = {
  readonly cases: number;
  readonly figures: readonly Spread[];
  readonly rates: Readonly<Record<JudgedId, Rate>>;
};

export type Month = Group & {
  /** `2026-03`. */
  readonly month: string;
};

export type Audit = {
  readonly all: Group;
  /** From the first month with a case to the last, those without any among them. */
  readonly months: readonly Month[];
  readonly closed: number;
  readonly open: number;
  /** On bypass still: left out of the figures, which are not theirs yet. */
  readonly running: readonly string[];
  /** Left out of the figures, with the reason: what can't be read, and what was recovered only in part. */
  readonly damaged: readonly { readonly id: string; readonly why: string }[];
};

/** Pure; `cases` as they were chosen, in any order. */
export function auditOf(cases: readonly Told[]): Audit {
  const damaged = cases.flatMap((one) => {
    const why = one.fault ?? one.damage;
    return why === undefined ? [] : [{ id: one.id, why }];
  });
  const whole = cases.flatMap((one) => (one.fault === undefined && one.damage === undefined ? [one] : []));
  const counted = whole.filter(({ isRunning }) => !isRunning);
  return {
    all: groupOf(counted),
    months: monthsOf(counted),
    closed: whole.filter(({ state }) => state === "closed").length,
    open: whole.filter(({ state }) => state === "open").length,
    running: whole.flatMap(({ id, isRunning }) => (isRunning ? [id] : [])),
    damaged,
  };
}

function groupOf(cases: readonly CaseSummary[]): Group {
  return {
    cases: cases.length,
    figures: MANY_FIGURE_NAMES.map((name) => spreadOf(name, cases)),
    rates: Object.fromEntries(JUDGED_IDS.map((id) => [id, rateOf(id, cases)])) as Group["rates"],
  };
}

function spreadOf(name: ManyFigureName, cases: readonly CaseSummary[]): Spread {
  const values = cases.flatMap(({ figures }) => figures[name] ?? []);
  return {
    name,
    known: values.length,
    unknown: cases.length - values.length,
    quartiles: quartilesOf(values),
  };
}

function rateOf(id: JudgedId, cases: readonly CaseSummary[]): Rate {
  const count = (verdict: string) => cases.filter(({ verdicts }) => verdicts[id] === verdict).length;
  const [met, notMet] = [count("met"), count("not met")];
  const assessed = met + notMet;
  return {
    met,
    notMet,
    notAssessable: cases.length - assessed,
    percent: assessed === 0 ? null : (100 * met) / assessed,
  };
}

type Counted = CaseSummary & { readonly id: string };

function monthsOf(cases: readonly Counted[]): Month[] {
  const byMonth = Map.groupBy(cases, (one) => dayIn(one).slice(0, 7));
  const known = [...byMonth.keys()].sort();
  return monthsBetween(known[0], known.at(-1)).map((month) => ({
    month,
    ...groupOf(byMonth.get(month) ?? []),
  }));
}

/** A clock that was wrong by centuries must not make a chart of thousands of months. */
const MOST_MONTHS = 1200;

function monthsBetween(first: string | undefined, last: string | undefined): string[] {
  if (first === undefined || last === undefined) return [];
  const number = (month: string) => Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1;
  const from = Math.max(number(first), number(last) - MOST_MONTHS + 1);
  return Array.from({ length: number(last) - from + 1 }, (_, i) => {
    const [year, month] = [Math.floor((from + i) / 12), ((from + i) % 12) + 1];
    return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}`;
  });
}

/** The spread of one figure in a group. */
export const spreadIn = ({ figures }: Group, name: ManyFigureName): Spread =>
  figures.find((spread) => spread.name === name) ?? { name, known: 0, unknown: 0, quartiles: null };

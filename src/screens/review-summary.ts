/** The summary of a case as blocks of rows: what a reader wants to know in the first minute. */
import { completenessOf } from "../figures/completeness.ts";
import type { Figure } from "../figures/figure.ts";
import { type Indicator, indicatorsOf } from "../figures/indicators.ts";
import type { Run } from "../figures/run.ts";
import { type Interval, intervalsOf, lasted, total } from "../figures/spans.ts";
import { type Trend, type TrendPoint, trendsOf } from "../figures/trends.ts";
import { stopwatch } from "../format/duration.ts";
import { clockTime, clockTimeOf, dayOf } from "../format/instant.ts";
import { fixed, plain, UNKNOWN } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import { unitText } from "../format/unit.ts";
import { spanName } from "../protocol/names.ts";
import type { Entry } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";
import { type Block, named } from "./review-flow.ts";
import { totalBlocks } from "./review-totals.ts";
import { wrapped } from "./wrapped.ts";

/** Every block, its rows no wider than `width`. `offset`: minutes east of UTC for clock times. */
export const summaryBlocks = (run: Run, offset: number, width: number): readonly Block[] =>
  [
    caseBlock(run),
    timesBlock(run, offset),
    incidentsBlock(run),
    ...totalBlocks(run),
    missingBlock(run),
    extremesBlock(run, offset),
    indicatorsBlock(run),
  ].map(({ title, rows }) => ({ title, rows: rows.flatMap((row) => hanging(row, width)) }));

/** A row that is too long goes on in the next ones, a little to the right. */
function hanging(row: string, width: number): string[] {
  const indent = row.length - row.trimStart().length;
  const [first = "", ...rest] = wrapped(row.trimStart(), Math.max(1, width - indent - 2));
  return [" ".repeat(indent) + first, ...rest.map((text) => " ".repeat(indent + 2) + text)];
}

function caseBlock(run: Run): Block {
  const { written } = run.course.record;
  const count = (test: (fact: Fact) => boolean) => written.filter(test).length;
  const putRight = count(({ corrections, struck }) => corrections.length > 0 && !struck);
  const struck = count((fact) => fact.struck);
  const { missing, asked } = lacking(run);
  return {
    title: "case",
    rows: [
      ...openAndClosed(written),
      named("pump", operatorsText(written)),
      named("entries", String(written.length)),
      named("put right", `${putRight}, struck out ${struck}`),
      named("incidents", String(ofKind(run.course.record.facts, "incident").length)),
      named("missing", `${missing.length} of ${asked} items`),
    ],
  };
}

function openAndClosed(written: readonly Fact[]): string[] {
  const opened = written.find(({ entry }) => entry.kind === "opened");
  const last = written.findLast(({ entry }) => entry.kind === "closed" || entry.kind === "reopened");
  const closed = last?.entry.kind === "closed" ? last.entry : null;
  const latest = written.at(-1);
  return [
    named("opened", opened ? dayAndTime(opened.entry) : UNKNOWN),
    closed
      ? named("closed", `${dayAndTime(closed)} ${harmless(closed.operator)}`)
      : named("open, last entry", latest ? dayAndTime(latest.entry) : UNKNOWN),
  ];
}

const dayAndTime = ({ at }: Pick<Entry, "at">): string => `${dayOf(at)} ${clockTimeOf(at).slice(0, 5)}`;

/** Who ran the pump from when. */
const operatorsText = (written: readonly Fact[]): string =>
  written
    .flatMap(({ entry, struck }) =>
      !struck && (entry.kind === "opened" || entry.kind === "operator")
        ? [`${harmless(entry.operator)} ${clockTimeOf(entry.at).slice(0, 5)}`]
        : [],
    )
    .join(", ");

/** More intervals than this are told by their number. */
const MOST_INTERVALS = 8;

function timesBlock({ course, timers, now }: Run, offset: number): Block {
  const others = [...course.spans.keys()].filter((what) => !(what in ALWAYS));
  return {
    title: "times",
    rows: [
      ...timed("bypass", timers.bypass.intervals, now, offset),
      ...timed("clamp", timers.arrest.intervals, now, offset),
      named("reperfusion", timers.reperfusion.total === null ? UNKNOWN : stopwatch(timers.reperfusion.total)),
      ...others.map((what) =>
        named(
          harmless(spanName(what, course.protocol)),
          stopwatch(total(intervalsOf(course.spans, what), now)),
        ),
      ),
    ],
  };
}

/** The time in all; of more than one interval each. */
function timed(name: string, intervals: readonly Interval[], now: number, offset: number): string[] {
  const [only, second] = intervals;
  if (!only) return [named(name, UNKNOWN)];
  const all = stopwatch(total(intervals, now));
  if (!second) return [named(name, `${all} ${stretchText(only, offset)}`)];
  const each = intervals.map((one) =>
    named("", `${stopwatch(lasted(one, now))} ${stretchText(one, offset)}`),
  );
  const more = each.length - MOST_INTERVALS;
  return [
    named(name, `${all} in ${intervals.length}`),
    ...each.slice(0, MOST_INTERVALS),
    ...(more > 0 ? [named("", `and ${more} more`)] : []),
  ];
}

const ALWAYS = { bypass: true, clamp: true };

const stretchText = ({ on, to }: Interval, offset: number): string =>
  `${clockTimeOf(on.entry.at).slice(0, 5)}–${to === null ? "on" : clockTime({ ms: to, offset }).slice(0, 5)}`;

function incidentsBlock({ course }: Run): Block {
  const incidents = ofKind(course.record.facts, "incident");
  return {
    title: "incidents",
    rows:
      incidents.length === 0
        ? ["none recorded"]
        : incidents.map(({ entry }) => `${clockTimeOf(entry.at).slice(0, 5)} ${harmless(entry.text)}`),
  };
}

function missingBlock(run: Run): Block {
  const { missing } = lacking(run);
  return {
    title: "missing from the record",
    rows: missing.length === 0 ? ["nothing"] : missing.map(({ item }) => harmless(item)),
  };
}

/** What the published content of a perfusion record asks for and the case does not hold. */
function lacking(run: Run) {
  const asked = completenessOf(run).filter(({ state }) => state !== "not-applicable");
  return { asked: asked.length, missing: asked.filter(({ state }) => state === "missing") };
}

function extremesBlock({ course }: Run, offset: number): Block {
  const rows = trendsOf(course).flatMap((trend) =>
    trend.lines.flatMap(({ name, points }) => {
      const [first, ...rest] = points;
      if (!first) return [];
      const lowest = rest.reduce((low, point) => (point.value < low.value ? point : low), first);
      const highest = rest.reduce((high, point) => (point.value > high.value ? point : high), first);
      return [named(`${name} ${unitText(trend.unit)}`.trim(), rangeText(trend, lowest, highest, offset))];
    }),
  );
  return { title: "lowest and highest", rows: rows.length === 0 ? ["nothing was measured"] : rows };
}

function rangeText({ decimals }: Trend, lowest: TrendPoint, highest: TrendPoint, offset: number): string {
  const told = ({ value, at }: TrendPoint) =>
    `${fixed(value, decimals)} ${clockTime({ ms: at, offset }).slice(0, 5)}`;
  return lowest.value === highest.value ? told(lowest) : `${told(lowest)} – ${told(highest)}`;
}

function indicatorsBlock(run: Run): Block {
  return {
    title: "quality indicators",
    rows: indicatorsOf(run).map((one) => `${one.name}: ${verdictText(one)}`),
  };
}

/** A value to look at needs no verdict; one that can't be known says so in place of a number. */
function verdictText({ verdict, value }: Indicator): string {
  if (verdict === "not assessable") return verdict;
  return verdict === "shown" ? roundedText(value) : `${verdict}, ${roundedText(value)}`;
}

const roundedText = ({ value, unit }: Figure): string =>
  value === null ? UNKNOWN : `${plain(Number(value.toFixed(1)))} ${unitText(unit)}`;

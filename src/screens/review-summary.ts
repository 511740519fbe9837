/** The summary of a case as blocks of rows: what a reader wants to know in the first minute. */
import { completenessOf } from "../figures/completeness.ts";
import { givenMl } from "../figures/doses.ts";
import { ROUTE_NAMES, spanName } from "../figures/entry-words.ts";
import { type Figure, figureText } from "../figures/figure.ts";
import type { Run } from "../figures/run.ts";
import { type Interval, intervalsOf, lasted, total } from "../figures/spans.ts";
import { type Trend, type TrendPoint, trendsOf } from "../figures/trends.ts";
import { stopwatch } from "../format/duration.ts";
import { clockTime, clockTimeOf, dayOf } from "../format/instant.ts";
import { fixed, grouped, plain, signed, UNKNOWN } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import { unitText } from "../format/unit.ts";
import { ROUTES } from "../record/entries-given.ts";
import type { EntryOf } from "../record/entry.ts";
import { type Fact, ofKind } from "../record/standing.ts";
import type { Block } from "./review-flow.ts";
import { wrapped } from "./wrapped.ts";

/** Every block, its rows no wider than `width`. `offset`: minutes east of UTC for clock times. */
export const summaryBlocks = (run: Run, offset: number, width: number): readonly Block[] =>
  [
    caseBlock(run),
    timesBlock(run, offset),
    volumesBlock(run),
    arrestBlock(run),
    coagulationBlock(run),
    incidentsBlock(run),
    missingBlock(run),
    extremesBlock(run, offset),
  ].map(({ title, rows }) => ({ title, rows: rows.flatMap((row) => hanging(row, width)) }));

/** A row that is too long goes on in the next ones, a little to the right. */
function hanging(row: string, width: number): string[] {
  const indent = row.length - row.trimStart().length;
  const [first = "", ...rest] = wrapped(row.trimStart(), Math.max(1, width - indent - 2));
  return [" ".repeat(indent) + first, ...rest.map((text) => " ".repeat(indent + 2) + text)];
}

const NAME = 14;
const named = (name: string, value: string): string => `${name.padEnd(NAME)} ${value}`;

function caseBlock({ course }: Run): Block {
  const { written } = course.record;
  const opened = written.find(({ entry }) => entry.kind === "opened");
  const last = written.at(-1);
  const closed = written.findLast(({ entry }) => entry.kind === "closed" || entry.kind === "reopened");
  const operators = written.filter(
    ({ entry: { kind }, struck }) => !struck && (kind === "opened" || kind === "operator"),
  ) as unknown as Fact<EntryOf<"operator">>[];
  const count = (test: (fact: Fact) => boolean) => written.filter(test).length;
  return {
    title: "case",
    rows: [
      opened ? named("opened", dayAndTime(opened)) : named("opened", UNKNOWN),
      closed?.entry.kind === "closed"
        ? named("closed", `${dayAndTime(closed)} by ${harmless(closed.entry.operator)}`)
        : named("open", last ? `last entry ${dayAndTime(last)}` : UNKNOWN),
      named(
        "pump",
        operators
          .map(({ entry }) => `${harmless(entry.operator)} ${clockTimeOf(entry.at).slice(0, 5)}`)
          .join(", "),
      ),
      named("entries", String(written.length)),
      named("put right", String(count(({ corrections, struck }) => corrections.length > 0 && !struck))),
      named("struck out", String(count(({ struck }) => struck))),
    ],
  };
}

const dayAndTime = ({ entry: { at } }: Fact): string => `${dayOf(at)} ${clockTimeOf(at).slice(0, 5)}`;

/** More intervals than this are told by their number. */
const MOST_INTERVALS = 8;

function timesBlock({ course, timers, now }: Run, offset: number): Block {
  const timed = (name: string, intervals: readonly Interval[]): string[] => {
    if (intervals.length === 0) return [named(name, UNKNOWN)];
    const each = intervals.map(
      (one) => `  ${stretchText(one, offset)} ${stopwatch(lasted(one, now)).padStart(8)}`,
    );
    const more = each.length - MOST_INTERVALS;
    return [
      named(name, stopwatch(total(intervals, now))),
      ...each.slice(0, MOST_INTERVALS),
      ...(more > 0 ? [`  and ${more} more`] : []),
    ];
  };
  const others = [...course.spans.keys()].filter((what) => !(what in ALWAYS));
  return {
    title: "times",
    rows: [
      ...timed("bypass", timers.bypass.intervals),
      ...timed("clamp", timers.arrest.intervals),
      named("reperfusion", timers.reperfusion.total === null ? UNKNOWN : stopwatch(timers.reperfusion.total)),
      ...others.map((what) =>
        named(spanName(what, course.protocol), stopwatch(total(intervalsOf(course.spans, what), now))),
      ),
    ],
  };
}

const ALWAYS = { bypass: true, clamp: true };

const stretchText = ({ on, to }: Interval, offset: number): string =>
  `${clockTimeOf(on.entry.at)}–${to === null ? "on" : clockTime({ ms: to, offset })}`;

const mL = ({ value }: Figure) => (value === null ? UNKNOWN : `${fixed(value)} mL`);
const signedMl = ({ value }: Figure) => (value === null ? UNKNOWN : `${signed(value)} mL`);

function volumesBlock({ course: { balances }, pump, netToPatient }: Run): Block {
  return {
    title: "volumes",
    rows: [
      named("in", mL(balances.fluidIn)),
      named("urine", mL(balances.urine)),
      named("ultrafiltrate", mL(balances.ultrafiltrate)),
      named("other out", mL(balances.otherOut)),
      named("net", signedMl(balances.net)),
      named("returned", mL(balances.returned)),
      named("left in pump", mL(pump.left)),
      named("to patient", signedMl(netToPatient)),
    ],
  };
}

function arrestBlock({ course: { doses, balances } }: Run): Block {
  const byRoute = ROUTES.map(
    (route) => [ROUTE_NAMES[route], doses.filter((dose) => dose.route === route)] as const,
  );
  return {
    title: "arrest solution",
    rows: [
      named("given", doses.length === 0 ? UNKNOWN : `${plain(givenMl(doses))} mL in ${doses.length}`),
      ...byRoute
        .filter(([, those]) => those.length > 0)
        .map(([name, those]) => named(`  ${name}`, `${plain(givenMl(those))} mL in ${those.length}`)),
      named("crystalloid", mL(balances.arrestCrystalloid)),
    ],
  };
}

function coagulationBlock({ coagulation, course }: Run): Block {
  const acts = ofKind(course.record.facts, "act").map(({ entry }) => plain(entry.seconds));
  const { heparinTotal, heparinPerKg, protamineGiven } = coagulation;
  const iu = heparinTotal.value === null ? UNKNOWN : `${grouped(heparinTotal.value)} IU`;
  const each = heparinPerKg.value === null ? "" : `, ${figureText(heparinPerKg)}`;
  return {
    title: "heparin and ACT",
    rows: [
      named("heparin", iu + each),
      named("protamine", protamineGiven.value === null ? UNKNOWN : figureText(protamineGiven)),
      named("ACT", acts.length === 0 ? UNKNOWN : `${acts.join(" ")} s`),
    ],
  };
}

function incidentsBlock({ course }: Run): Block {
  const incidents = ofKind(course.record.facts, "incident");
  return {
    title: `incidents: ${incidents.length}`,
    rows:
      incidents.length === 0
        ? ["none recorded"]
        : incidents.map(({ entry }) => `${clockTimeOf(entry.at).slice(0, 5)} ${harmless(entry.text)}`),
  };
}

/** What the published content of a perfusion record asks for and the case does not hold. */
function missingBlock(run: Run): Block {
  const all = completenessOf(run);
  const missing = all.filter(({ state }) => state === "missing");
  const asked = all.filter(({ state }) => state !== "not-applicable").length;
  return {
    title: `missing: ${missing.length} of ${asked} items`,
    rows: missing.length === 0 ? ["nothing"] : missing.map(({ item }) => harmless(item)),
  };
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

/** The figures of a case as data and as text, each with its working. */
import { entryWords, ROUTE_NAMES } from "../figures/entry-words.ts";
import { type Figure, known, missing } from "../figures/figure.ts";
import { liveFigures } from "../figures/live-figures.ts";
import { type Run, readRun } from "../figures/run.ts";
import { type Interval, lasted } from "../figures/spans.ts";
import type { Timer } from "../figures/timers.ts";
import { stopwatch } from "../format/duration.ts";
import { type Instant, toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import { figureWords, valueText } from "./figure-words.ts";

export type NamedFigure = Figure & { readonly name: string };

/** Every figure of a case at a moment, by name, in the order in which a person asks for them. */
export function figuresOf(file: CaseFile, at: Instant): readonly NamedFigure[] {
  const run = readRun(file, at.ms);
  const figures = { ...recorded(run), ...reckoned(run) };
  return Object.entries(figures).map(([name, figure]) => ({ name, ...figure }));
}

/** What follows from times, volumes and drugs. */
function recorded(run: Run): Record<string, Figure> {
  const { timers, coagulation } = run;
  return {
    bypassTime: timeFigure(timers.bypass, run.now),
    arrestTime: timeFigure(timers.arrest, run.now),
    reperfusionTime: timeFigure(timers.reperfusion, run.now),
    circulatoryArrestTime: timeFigure(timers.circulatoryArrest, run.now),
    sinceDose: sinceDose(run),
    ...run.course.balances,
    leftInPump: run.pump.left,
    netToPatient: run.netToPatient,
    heparinTotal: coagulation.heparinTotal,
    heparinFirst: coagulation.heparinFirst,
    heparinPerKg: coagulation.heparinPerKg,
    protamineOnFirst: coagulation.protamineOnFirst,
    protamineOnTotal: coagulation.protamineOnTotal,
    protamineGiven: coagulation.protamineGiven,
    lastAct: run.act
      ? known(run.act.seconds, "s", `${stopwatch(run.act.age)} ago, target ${run.act.target} s`)
      : missing("s", "no ACT recorded"),
    fullFlow: run.course.fullFlow,
  };
}

/** What follows from readings and gases. */
function reckoned(run: Run): Record<string, Figure> {
  const { ischaemia: _, gradient, ...figures } = liveFigures(run);
  return { ...figures, gradient: gradient.figure };
}

/** Seconds a span was on in all, with each interval as working. */
function timeFigure({ total, intervals }: Timer, now: number): Figure {
  if (total === null) return missing("s", "never on");
  return known(
    Math.floor(total / 1000),
    "s",
    intervals.map((interval) => stopwatch(lasted(interval, now))).join(" + "),
  );
}

function sinceDose({ nextDose: { since }, running, now }: Run): Figure {
  if (running) return missing("s", `a dose has been running for ${stopwatch(now - running.start)}`);
  return since === null
    ? missing("s", "no dose recorded")
    : known(Math.floor(since / 1000), "s", "since the end of the last dose");
}

/** All of it as JSON data: figures, spans and doses, with times in ISO 8601. */
export function figuresJson(file: CaseFile, at: Instant): object {
  const run = readRun(file, at.ms);
  const iso = (ms: number | null) => (ms === null ? null : toIso({ ms, offset: at.offset }));
  const interval = ({ from, to, way }: Interval) => ({
    from: iso(from),
    to: iso(to),
    ...(way ? { way } : {}),
  });
  return {
    case: file.id,
    label: file.label,
    at: iso(run.now),
    phase: run.course.phase,
    operator: run.course.operator,
    entries: file.entries.length,
    figures: Object.fromEntries(figuresOf(file, at).map(({ name, ...figure }) => [name, figure])),
    spans: Object.fromEntries(
      [...run.course.spans].map(([what, intervals]) => [what, intervals.map(interval)]),
    ),
    doses: run.course.doses.map(({ start, end, ml, route, solution }) => ({
      start: iso(start),
      end: iso(end),
      ml,
      route: route ?? null,
      solution: solution?.id ?? null,
    })),
    nextDose: { due: iso(run.nextDose.due), because: run.nextDose.because },
  };
}

/** The same for people, a row a figure. */
export function figuresText(file: CaseFile, at: Instant): string {
  const rows = figuresOf(file, at).map(
    ({ name, ...figure }) =>
      `${figureWords(name).label.padEnd(38)} ${valueText(name, figure).padStart(14)}   ${figure.working}`,
  );
  const doses = readRun(file, at.ms).course.doses.map(
    ({ ml, route, last }) =>
      `  ${entryWords(last.entry, file.protocol).says} (${ml ?? "?"} mL, ${route ? ROUTE_NAMES[route] : "route not said"})`,
  );
  return [...rows, ...(doses.length > 0 ? ["doses", ...doses] : [])].join("\n");
}

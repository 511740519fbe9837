/** A case as rows for an analytical engine: one an entry, or one a figure, each with the case it is of. */
import { standsText } from "../figures/entry-words.ts";
import { indicatorsOf } from "../figures/indicators.ts";
import { type Course, courseOf, readRun } from "../figures/run.ts";
import { intervalsOf, isOnAt } from "../figures/spans.ts";
import { toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import { caseSummary, summedUpAt } from "./case-summary.ts";
import { figureWords } from "./figure-words.ts";
import { figuresOf } from "./figures.ts";
import type { Exported } from "./formats.ts";
import { MANY_FIGURE_NAMES, MANY_FIGURES } from "./many-words.ts";

/** The rows of one case; every row of a kind has the same fields. */
export function exportRows(file: CaseFile, what: Exported): object[] {
  switch (what) {
    case "entries":
      return entryRows(file);
    case "figures":
      return figureRows(file);
    default:
      return what satisfies never;
  }
}

/** In the order of writing, as they stand now; corrections and what was struck out are rows too. */
function entryRows(file: CaseFile): object[] {
  const course = courseOf(file);
  return course.record.written.map((fact) => {
    const { id: _, seq, kind, at, loggedAt, by, typed, note, ...values } = fact.entry;
    return {
      ...{ case: file.id, entry: seq, kind, at, loggedAt, by },
      ...{ phase: phaseAt(course, fact.at), stands: standsText(fact), corrections: fact.corrections.length },
      ...{ values, note: note ?? null, typed },
    };
  });
}

/** Where in the run a moment lies, by the spans as they stand now; `between` is off bypass with another run to come. */
function phaseAt({ spans }: Course, moment: number): string {
  const bypass = intervalsOf(spans, "bypass");
  if (isOnAt(intervalsOf(spans, "clamp"), moment) || isOnAt(intervalsOf(spans, "circulatory-arrest"), moment))
    return "arrested";
  if (isOnAt(bypass, moment)) return "on bypass";
  if (!bypass.some(({ from }) => from <= moment)) return "before";
  return bypass.some(({ from }) => from > moment) ? "between" : "after";
}

/** Every figure at the case's last entry, those of an audit, and the indicators with their verdicts. */
function figureRows(file: CaseFile): object[] {
  const at = summedUpAt(file);
  const summary = caseSummary(file);
  const run = readRun(file, at.ms);
  const row = {
    case: file.id,
    opened: summary.opened,
    state: summary.state,
    at: toIso({ ...at, ms: run.now }),
  };
  const own = figuresOf(file, at);
  const names = new Set(own.map(({ name }) => name));
  return [
    ...own.map(({ name, value, unit, working, source }) => ({
      ...row,
      ...{ figure: name, words: figureWords(name).label, value, unit, verdict: null },
      ...{ working, source: source ?? null },
    })),
    ...MANY_FIGURE_NAMES.filter((name) => !names.has(name)).map((name) => ({
      ...row,
      ...{ figure: name, words: MANY_FIGURES[name].label, value: summary.figures[name] },
      ...{ unit: MANY_FIGURES[name].unit, verdict: null, working: "as in an audit", source: null },
    })),
    ...indicatorsOf(run).map(({ id, name, verdict, value: { value, unit, working }, source }) => ({
      ...row,
      ...{ figure: `indicator:${id}`, words: name, value, unit, verdict, working, source },
    })),
  ];
}

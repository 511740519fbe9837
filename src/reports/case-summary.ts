/** A case in a few numbers: what a list shows of it, and what it adds to the figures of many. */
import * as z from "zod";
import { indicatorsOf } from "../figures/indicators.ts";
import { liveFigures } from "../figures/live-figures.ts";
import { isOn, type Run, readRun } from "../figures/run.ts";
import { fromIso, type Instant, msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import { JUDGED_IDS, type JudgedId, MANY_FIGURE_NAMES, type ManyFigureName } from "./many-words.ts";

const verdict = z.enum(["met", "not met", "not assessable"]);

const summarySchema = z.object({
  label: z.string(),
  opened: z.string(),
  entries: z.number(),
  state: z.enum(["open", "closed"]),
  operation: z.string().optional(),
  /** Whether it was on bypass, or clamped, when the last entry was written: then its times still grow. */
  isRunning: z.boolean(),
  /** `null` where a figure is not known; units stand in MANY_FIGURES. */
  figures: z.record(z.enum(MANY_FIGURE_NAMES as [ManyFigureName]), z.number().nullable()),
  verdicts: z.record(z.enum(JUDGED_IDS as [JudgedId]), verdict),
});

export type CaseSummary = z.infer<typeof summarySchema>;

/** Changes with every change of what a summary holds or of how a figure in it is reckoned: older ones are made anew. */
const SUMMARY_NAME = "pumpside-summary-1";

/** The moment that a case is summed up at: when its last entry was written. A case that runs on has no later one. */
export const summedUpAt = ({ entries }: Pick<CaseFile, "entries">): Instant =>
  fromIso(entries.at(-1)?.loggedAt ?? "") ?? { ms: 0, offset: 0 };

/** Pure, and of the file alone: the same case always has the same summary. */
export function caseSummary(file: CaseFile): CaseSummary {
  const { entries } = file;
  const run = readRun(file, summedUpAt(file).ms);
  const { course } = run;
  const indicators = indicatorsOf(run);
  const judged = new Map(indicators.map(({ id, verdict: met }) => [id, met]));
  const shown = new Map(indicators.map(({ id, value }) => [id, value.value]));
  return {
    label: file.label,
    opened: entries[0]?.loggedAt ?? "",
    entries: entries.length,
    state: course.closedAt === null ? "open" : "closed",
    operation: course.plan.operation,
    isRunning: course.closedAt === null && (isOn(course, "bypass") || isOn(course, "clamp")),
    figures: figuresOfMany(run, shown),
    verdicts: Object.fromEntries(
      JUDGED_IDS.map((id) => [id, verdict.catch("not assessable").parse(judged.get(id))]),
    ) as CaseSummary["verdicts"],
  };
}

function figuresOfMany(run: Run, shown: ReadonlyMap<string, number | null>): CaseSummary["figures"] {
  const { course, timers, coagulation } = run;
  const live = liveFigures(run);
  const seconds = (ms: number | null) => (ms === null ? null : Math.floor(ms / 1000));
  return {
    bypassTime: seconds(timers.bypass.total),
    arrestTime: seconds(timers.arrest.total),
    circulatoryArrestTime: seconds(timers.circulatoryArrest.total),
    doses: course.doses.length === 0 ? null : course.doses.length,
    arrestGiven: course.balances.arrestGiven.value,
    heparinTotal: coagulation.heparinTotal.value,
    heparinPerKg: coagulation.heparinPerKg.value,
    protamineGiven: coagulation.protamineGiven.value,
    deliveryLowest: live.deliveryLowest.value,
    deliveryBelowMinutes: live.deliveryBelowMinutes.value,
    haematocritLowest: shown.get("haematocrit-lowest") ?? null,
    lactateHighest: shown.get("lactate") ?? null,
    fluidIn: course.balances.fluidIn.value,
    urine: course.balances.urine.value,
    ultrafiltrate: course.balances.ultrafiltrate.value,
    net: course.balances.net.value,
    netToPatient: run.netToPatient.value,
  };
}

/** How a case is summed up for an index of many. */
export const SUMMARISER = {
  name: SUMMARY_NAME,
  of: caseSummary,
  read: (value: unknown): CaseSummary | null => summarySchema.safeParse(value).data ?? null,
};

/** The day on which a case was opened, in milliseconds; its order among others. */
export const openedMs = ({ opened }: Pick<CaseSummary, "opened">): number => msOf(opened);

/** Handover, situation and assessment: where the run stands, and how the patient does. */
import { minutesText, stopwatch } from "../format/duration.ts";
import { clockTimeOf } from "../format/instant.ts";
import { fixed, plain, signed } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import { unitText } from "../format/unit.ts";
import { fluidName, spanName } from "../protocol/names.ts";
import { GAS_VALUES, type GasName, READINGS, type ReadingName } from "../record/quantities.ts";
import { ofKind } from "../record/standing.ts";
import { advisoriesOf } from "./advisories/advisories.ts";
import { shownUnit, toShown } from "./conversions.ts";
import { amountText, fractionText } from "./entry-words.ts";
import { figureText } from "./figure.ts";
import { liveOxygen } from "./live-oxygen.ts";
import { latestReading } from "./measured.ts";
import type { Run } from "./run.ts";
import { openInterval } from "./spans.ts";
import type { Timer } from "./timers.ts";

const NOT = "not recorded";

/** Lines of words: phase and clocks, flow and pressure, temperatures, what is in the pump, what is on. */
export function situation(run: Run): readonly string[] {
  const { timers, course, flowOrder, targetOrder, pump } = run;
  const stopped = timers.circulatoryArrest;
  const order = flowOrder?.entry;
  const flowAsked =
    order === undefined
      ? NOT
      : order.fraction === undefined
        ? `${plain(order.litresPerMinute ?? 0)} L/min`
        : fractionText(order.fraction);
  return [
    [
      course.phase,
      timerText("bypass", timers.bypass),
      timerText("clamp", timers.arrest),
      ...(stopped.total === null ? [] : [timerText("circulatory arrest", stopped)]),
    ].join(" · "),
    [
      readingText(run, "flow"),
      `flow ordered ${flowAsked}`,
      `full ${figureText(course.fullFlow, 2)}`,
      readingText(run, "meanPressure"),
    ].join(" · "),
    [
      ...TEMPERATURES.map((name) => readingText(run, name)).filter((text) => !text.endsWith(NOT)),
      `target ${targetOrder ? `${plain(targetOrder.entry.celsius)} °C` : NOT}`,
    ].join(" · "),
    `in the pump ${pump.left.value === null ? NOT : `${plain(pump.left.value)} mL (level read ${ago(pump.age ?? 0)})`}`,
    ...onNow(run),
  ];
}

/** Lines of words: gas, ACT with its age, heparin, doses, oxygen, balances, blood, advice that stands, incidents. */
export function assessment(run: Run): readonly string[] {
  const { course, act } = run;
  const { balances } = course;
  const oxygen = liveOxygen(run);
  const standing = advisoriesOf(run).filter(({ acknowledged }) => acknowledged === null);
  const incidents = ofKind(course.record.facts, "incident");
  return [
    gasText(run, "arterial"),
    gasText(run, "venous"),
    `ACT ${act ? `${plain(act.seconds)} s ${ago(act.age)}, target ${plain(act.target)} s` : NOT} · heparin ${heparinText(run)}`,
    doseText(run),
    `DO2i ${figureText(oxygen.delivery)} · O2ER ${figureText(oxygen.extraction)}`,
    `fluid in ${figureText(balances.fluidIn)}, out ${figureText(balances.out)}, net ${signed(balances.net.value)} mL · urine ${figureText(balances.urine)}`,
    bloodText(run),
    ...standing.map(({ text }) => `advice: ${text}`),
    ...incidents.map(({ entry }) => `incident ${clockTimeOf(entry.at).slice(0, 5)}: ${harmless(entry.text)}`),
  ].filter((line) => line !== "");
}

const TEMPERATURES: readonly ReadingName[] = [
  "arterialTemperature",
  "venousTemperature",
  "nasopharyngealTemperature",
  "bladderTemperature",
  "rectalTemperature",
];

const ago = (ms: number): string => `${minutesText(ms)} ago`;

function timerText(name: string, { total, current }: Timer): string {
  if (total === null) return `no ${name} yet`;
  return `${name} ${stopwatch(total)}${current === null ? " (off)" : ""}`;
}

/** The last value with its age, and whether it is no longer relied on. */
function readingText(run: Run, name: ReadingName): string {
  const { short, unit, decimals } = READINGS[name];
  const latest = latestReading(run, name);
  if (!latest) return `${short} ${NOT}`;
  return `${short} ${fixed(latest.value, decimals)} ${unitText(unit)} (${latest.holds ? "" : "old: "}${ago(latest.age)})`;
}

function onNow({ course: { spans, protocol } }: Run): readonly string[] {
  const names = [...spans.values()].flatMap((intervals) => {
    const open = openInterval(intervals);
    const known = open?.what === "bypass" || open?.what === "clamp";
    return open && !known ? [harmless(spanName(open.what, protocol))] : [];
  });
  return names.length > 0 ? [`also on: ${names.join(", ")}`] : [];
}

const heparinText = ({ coagulation: { heparinTotal }, course }: Run): string =>
  heparinTotal.value === null ? NOT : amountText("heparin", heparinTotal.value, "[IU]", course.protocol);

function gasText({ course: { record, protocol }, now }: Run, sample: "arterial" | "venous"): string {
  const last = ofKind(record.facts, "gas").findLast(({ entry }) => entry.sample === sample);
  if (!last) return sample === "arterial" ? `arterial gas ${NOT}` : "";
  const values = (Object.keys(GAS_VALUES) as GasName[]).flatMap((name) => {
    const value = last.entry.values[name];
    if (value === undefined) return [];
    const { short, unit, decimals } = GAS_VALUES[name];
    const shown = shownUnit(name, unit, protocol.shown);
    return [`${short} ${fixed(toShown(name, shown, value), shown === unit ? decimals : 1)}`];
  });
  return `${sample} gas ${ago(now - last.at)}: ${values.join(", ")}`;
}

function doseText({ course: { doses, balances }, nextDose, running }: Run): string {
  if (doses.length === 0) return "arrest solution: none given";
  const given = `arrest solution ${figureText(balances.arrestGiven)} in ${doses.length} ${doses.length === 1 ? "dose" : "doses"}`;
  if (running) return `${given}, one is running`;
  return nextDose.since === null ? given : `${given}, the last ended ${ago(nextDose.since)}`;
}

/** Blood given, by unit; what stands ready in the fridge is not in the record. */
function bloodText({ course: { volumes, protocol } }: Run): string {
  const products = new Set(protocol.fluidsIn.filter(({ sort }) => sort === "blood").map(({ id }) => id));
  const given = volumes.filter(
    ({ fact: { entry } }) => entry.direction === "in" && products.has(entry.fluid),
  );
  if (given.length === 0) return "no blood given · blood available: ask";
  const each = given.map(
    ({ fact: { entry }, ml }) => `${fluidName("in", entry.fluid, protocol)} ${plain(ml)} mL`,
  );
  return `blood given: ${each.join(", ")} · blood available: ask`;
}

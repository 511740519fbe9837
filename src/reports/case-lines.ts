/** The list of cases as lines: when, which, state, times, indicators, and what it was. */
import { stopwatch } from "../format/duration.ts";
import { clockTimeOf, dayOf } from "../format/instant.ts";
import { UNKNOWN } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import type { CaseSummary } from "./case-summary.ts";
import type { Told } from "./choose-cases.ts";

const HEAD = ["date", "case", "state", "bypass", "arrest", "indicators", "label, operation"];
const WIDTHS = [16, 15, 7, 8, 8, 10];
/** Times are numbers: they stand to the right. */
const RIGHT = new Set([3, 4]);

/** A head and a line a case, as they come. What is still running has a `+` behind its time. */
export const caseLines = (cases: readonly Told[]): string[] => [HEAD, ...cases.map(cellsOf)].map(lineOf);

const lineOf = (cells: readonly string[]): string =>
  cells
    .map((cell, i) => (RIGHT.has(i) ? cell.padStart(WIDTHS[i] ?? 0) : cell.padEnd(WIDTHS[i] ?? 0)))
    .join("  ")
    .trimEnd();

function cellsOf(one: Told): string[] {
  if (one.fault !== undefined)
    return ["", one.id, "unread", "", "", "", `cannot be read: ${harmless(one.fault)}`];
  const { id, opened, state, label, operation, damage } = one;
  const when = opened === "" ? "" : `${dayOf(opened)} ${clockTimeOf(opened).slice(0, 5)}`;
  const what = [label, operation].filter(Boolean).map((text) => harmless(text as string));
  return [
    ...[when, id, state, timeText(one, "bypassTime"), timeText(one, "arrestTime"), metText(one)],
    [...what, ...(damage ? ["DAMAGED, recovered in part"] : [])].join(", "),
  ];
}

function timeText({ figures, isRunning }: CaseSummary, name: "bypassTime" | "arrestTime"): string {
  const seconds = figures[name];
  return seconds === null ? UNKNOWN : `${stopwatch(seconds * 1000)}${isRunning ? "+" : ""}`;
}

/** How many of the indicators that could be assessed were met. */
function metText({ verdicts }: CaseSummary): string {
  const all = Object.values(verdicts);
  const assessed = all.filter((verdict) => verdict !== "not assessable").length;
  const met = all.filter((verdict) => verdict === "met").length;
  return assessed === 0 ? UNKNOWN : `${met} of ${assessed} met`;
}

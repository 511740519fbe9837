/** The course of the run: what was on and off, the arrest solution, heparin and protamine with the ACT, other drugs. */
import { IN_PRIME, isActMet } from "../figures/coagulation.ts";
import type { Dose } from "../figures/doses.ts";
import { amountText, ROUTE_NAMES } from "../figures/entry-words.ts";
import { intervalsOf, isOnAt, lasted, total } from "../figures/spans.ts";
import { stopwatch } from "../format/duration.ts";
import { plain, UNKNOWN } from "../format/number.ts";
import { drugName, spanName, wayName } from "../protocol/names.ts";
import { ROUTES } from "../record/routes.ts";
import { ofKind } from "../record/standing.ts";
import { lines, type Row, type Section, table } from "./blocks.ts";
import { clockOf, type Report } from "./report.ts";

/** Every span with each of its intervals, and how long in all. */
export function timesSection(report: Report): Section {
  const { run, file } = report;
  const rows = [...run.course.spans].flatMap(([what, intervals]): Row[] => {
    const name = spanName(what, file.protocol);
    const each = intervals.map((interval): Row => {
      const { way, from, to } = interval;
      const full = way === undefined ? name : `${name}, ${wayName(what, way, file.protocol)}`;
      const off = to === null ? "still on" : clockOf(report, to);
      return { cells: [full, clockOf(report, from), off, stopwatch(lasted(interval, run.now))] };
    });
    if (intervals.length < 2) return each;
    const all = stopwatch(total(intervals, run.now));
    return [...each, { cells: [`${name} in all`, "", "", all], sort: "total" }];
  });
  return {
    id: "times",
    title: "Times",
    blocks: [
      table("What was on and off", ["What", ">On", ">Off", ">Lasted"], rows, "Nothing was on."),
      table(
        "Milestones",
        [">Time", "What"],
        ofKind(run.course.record.facts, "moment").map(({ at, entry }) => [
          clockOf(report, at),
          spanName(entry.what, file.protocol),
        ]),
        "No milestone recorded.",
      ),
    ],
  };
}

/** Every dose, the sums by route, and the sum. */
export function arrestSection(report: Report): Section {
  const { doses, balances } = report.run.course;
  const rows = doses.map((dose, i) => ({ cells: doseCells(report, dose, i + 1) }));
  const sums: Row[] = ROUTES.flatMap((route) => {
    const those = doses.filter((dose) => dose.route === route);
    return those.length === 0 ? [] : [sumRow(`by the ${ROUTE_NAMES[route]}`, those)];
  });
  const all =
    doses.length === 0 ? [] : [sumRow(`in all, crystalloid ${mL(balances.arrestCrystalloid.value)}`, doses)];
  return {
    id: "arrest",
    title: "Arrest solution",
    blocks: [
      table(
        "Doses",
        [">No.", ">From", ">To", ">mL", "Route", "Solution", "Said of it"],
        rows,
        "No dose recorded.",
      ),
      table("Sums", ["Doses", ">mL"], [...sums, ...all], "Nothing given."),
    ],
  };
}

const mL = (value: number | null): string => (value === null ? UNKNOWN : `${plain(value)} mL`);

const sumRow = (name: string, doses: readonly Dose[]): Row => {
  const told = doses.filter(({ ml }) => ml !== null);
  const sum = told.reduce((all, { ml }) => all + (ml ?? 0), 0);
  const silent = doses.length - told.length;
  const count = `${doses.length} ${doses.length === 1 ? "dose" : "doses"}`;
  const without = silent > 0 ? `, ${silent} without a volume` : "";
  return { cells: [`${count} ${name}${without}`, told.length === 0 ? UNKNOWN : plain(sum)], sort: "total" };
};

function doseCells(
  report: Report,
  { start, end, ml, route, solution, last }: Dose,
  number: number,
): string[] {
  const { pressure, temperature } = last.entry;
  const measured = [
    pressure === undefined ? "" : `${plain(pressure)} mmHg`,
    temperature === undefined ? "" : `${plain(temperature)} °C`,
  ].filter(Boolean);
  return [
    String(number),
    clockOf(report, start),
    end === null ? "running" : clockOf(report, end),
    ml === null ? UNKNOWN : plain(ml),
    route ? ROUTE_NAMES[route] : "not said",
    solution?.name ?? UNKNOWN,
    [...measured, last.entry.note].filter(Boolean).join(", "),
  ];
}

/** Heparin, protamine and every ACT, in the order of happening. */
export function coagulationSection(report: Report): Section {
  const { run, file } = report;
  const { value: target, source } = file.protocol.coagulation.actForBypass;
  const rows = run.course.record.facts.flatMap(({ entry, at }): Row[] => {
    const clock = clockOf(report, at);
    if (entry.kind === "act") {
      const note = [againstTarget(report, entry.seconds, at), entry.note].filter(Boolean).join("; ");
      return [{ cells: [clock, "ACT", `${plain(entry.seconds)} s`, note] }];
    }
    if (entry.kind !== "drug" || (entry.name !== "heparin" && entry.name !== "protamine")) return [];
    const amount = amountText(entry.name, entry.amount, entry.unit, file.protocol);
    const into = entry.route === IN_PRIME ? "into the prime" : entry.route;
    return [{ cells: [clock, entry.name, amount, [into, entry.note].filter(Boolean).join("; ")] }];
  });
  return {
    id: "coagulation",
    title: "Heparin, protamine and ACT",
    blocks: [
      table("In the order of happening", [">Time", "What", ">Amount", "Said of it"], rows, "None recorded."),
      lines(`The ACT wanted on bypass is ${plain(target)} s${source ? ` (${source})` : ""}.`),
    ],
  };
}

/** Whether an ACT on bypass met its target; nothing of one before or after, which is measured for another reason. */
const againstTarget = ({ run, file }: Report, seconds: number, at: number): string => {
  if (!isOnAt(intervalsOf(run.course.spans, "bypass"), at)) return "";
  return isActMet(seconds, file.protocol.coagulation.actForBypass.value)
    ? "at its target"
    : "below its target";
};

/** Every other drug. */
export function drugsSection(report: Report): Section {
  const { run, file } = report;
  const rows = ofKind(run.course.record.facts, "drug")
    .filter(({ entry }) => entry.name !== "heparin" && entry.name !== "protamine")
    .map(({ entry, at }) => [
      clockOf(report, at),
      drugName(entry.name, file.protocol),
      amountText(entry.name, entry.amount, entry.unit, file.protocol),
      [entry.route, entry.checkedBy && `checked by ${entry.checkedBy}`, entry.note]
        .filter(Boolean)
        .join("; "),
    ]);
  return {
    id: "drugs",
    title: "Other drugs",
    blocks: [table("Drugs given", [">Time", "Drug", ">Dose", "Said of it"], rows, "None recorded.")],
  };
}

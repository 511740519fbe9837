/** Fluid: every volume, the sums of each fluid, and the reconciliation. */

import type { Figure } from "../figures/figure.ts";
import type { Volume } from "../figures/volumes.ts";
import { plain, signed, UNKNOWN } from "../format/number.ts";
import { fluidName } from "../protocol/names.ts";
import { ofKind } from "../record/standing.ts";
import { type Row, type Section, table } from "./blocks.ts";
import { figureWords, valueText } from "./figure-words.ts";
import { clockOf, type Report } from "./report.ts";

const WAYS = { in: "in", out: "out", returned: "returned" } as const;

/** Every volume and where it went, with the balance they add up to. */
export function fluidsSection(report: Report): Section {
  return {
    id: "fluids",
    title: "Fluid balance",
    blocks: [reconciliationTable(report), volumesTable(report), levelsTable(report)],
  };
}

/** Each line with the arithmetic behind it; what was not recorded says so. */
function reconciliationTable({ run }: Report) {
  const { balances } = run.course;
  const line = (name: string, figure: Figure, sort?: Row["sort"]): Row => ({
    cells: [
      figureWords(name).label,
      figure.value !== null && name.startsWith("net")
        ? `${signed(figure.value)} mL`
        : valueText(name, figure),
      figure.working,
    ],
    ...(sort ? { sort } : {}),
  });
  return table(
    "Reconciliation",
    ["What", ">Volume", "From"],
    [
      ...sumsOf(run.course.volumes, "in", run.course.protocol),
      ...(run.course.protocol.solutionCountsAsFluid ? [crystalloidRow(balances.arrestCrystalloid)] : []),
      line("fluidIn", balances.fluidIn, "total"),
      ...sumsOf(run.course.volumes, "out", run.course.protocol),
      line("out", balances.out, "total"),
      line("net", balances.net, "total"),
      line("returned", balances.returned),
      line("leftInPump", run.pump.left),
      line("netToPatient", run.netToPatient, "total"),
    ],
    "Nothing recorded.",
  );
}

const crystalloidRow = ({ value, working }: Figure): Row => ({
  cells: ["in: crystalloid of arrest solution", value === null ? UNKNOWN : `${plain(value)} mL`, working],
});

type Protocol = Report["run"]["course"]["protocol"];

/** The sum of each fluid that went one way, in the order in which it first came. */
function sumsOf(volumes: readonly Volume[], way: "in" | "out", protocol: Protocol): Row[] {
  const those = volumes.filter(({ fact }) => fact.entry.direction === way);
  return [...new Set(those.map(({ fact }) => fact.entry.fluid))].map((fluid) => {
    const each = those.filter(({ fact }) => fact.entry.fluid === fluid).map(({ ml }) => ml);
    const sum = each.reduce((all, ml) => all + ml, 0);
    return {
      cells: [`${way}: ${fluidName(way, fluid, protocol)}`, `${plain(sum)} mL`, each.map(plain).join(" + ")],
    };
  });
}

function volumesTable(report: Report) {
  const { volumes, protocol } = report.run.course;
  return table(
    "Volumes in the order of happening",
    [">Time", "Way", "Fluid", ">mL", "Said of it"],
    volumes.map(({ fact: { entry, at }, ml }) => [
      clockOf(report, at),
      WAYS[entry.direction],
      fluidName(entry.direction, entry.fluid, protocol) ?? "pump blood",
      plain(ml),
      [
        entry.bagTotal === undefined ? "" : `bag reads ${plain(entry.bagTotal)} mL`,
        entry.unitNumber && `unit ${entry.unitNumber}`,
        entry.checkedBy && `checked by ${entry.checkedBy}`,
        entry.note,
      ]
        .filter(Boolean)
        .join("; "),
    ]),
    "No volume recorded.",
  );
}

const levelsTable = (report: Report) =>
  table(
    "Levels in the reservoir, or left in the pump",
    [">Time", ">mL", "Said of it"],
    ofKind(report.run.course.record.facts, "level").map(({ entry, at }) => [
      clockOf(report, at),
      plain(entry.ml),
      entry.note ?? "",
    ]),
    "No level recorded.",
  );

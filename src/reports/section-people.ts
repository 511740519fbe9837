/** The people, the plan, and the components with their lots. */

import { figureText } from "../figures/figure.ts";
import { plain, UNKNOWN } from "../format/number.ts";
import { unitText } from "../format/unit.ts";
import { lastOf } from "../record/standing.ts";
import { pairs, type Section, table } from "./blocks.ts";
import type { Report } from "./report.ts";
import { operators } from "./section-head.ts";

export function peopleSection(report: Report): Section {
  const team = lastOf(report.run.course.record.facts, "team")?.entry.people ?? [];
  return {
    id: "people",
    title: "People",
    blocks: [
      table(
        "Team",
        ["Role", "Who"],
        team.map(({ role, who }) => [role, who || UNKNOWN]),
        "No team recorded.",
      ),
      table(
        "At the pump",
        ["Who", ">From"],
        operators(report).map(({ who, from }) => [who || UNKNOWN, from]),
        "Nobody recorded.",
      ),
    ],
  };
}

export function planSection({ run: { course }, file }: Report): Section {
  const { plan, protocol } = course;
  const solution = protocol.solutions.find(({ id }) => id === (plan.solution ?? protocol.usualSolution));
  const amount = (value: number | undefined, unit: string) =>
    value === undefined ? UNKNOWN : `${plain(value)} ${unitText(unit)}`;
  const prime = (plan.prime ?? []).map(
    ({ fluid, ml }) => `${protocol.fluidsIn.find(({ id }) => id === fluid)?.name ?? fluid} ${plain(ml)} mL`,
  );
  const components = lastOf(course.record.facts, "circuit")?.entry.components ?? [];
  return {
    id: "plan",
    title: "Plan and circuit",
    blocks: [
      pairs(
        ["full flow", `${figureText(course.fullFlow, 2)} (${course.fullFlow.working})`],
        ["arrest solution", solution?.name ?? UNKNOWN],
        ["target temperature", amount(plan.targetTemperature, "Cel")],
        ["heparin", amount(plan.heparinPerKg, "[IU]/kg")],
        ["wanted haematocrit", amount(plan.targetHaematocrit, "%")],
        ["prime", prime.join(", ") || UNKNOWN],
      ),
      table(
        "Components",
        ["Component", "Size", "Lot", "Expires"],
        components.map(({ component, size, lot, expires }) => [
          file.protocol.circuit.components.find(({ id }) => id === component)?.name ?? component,
          size ?? "",
          lot ?? "",
          expires ?? "",
        ]),
        "No component recorded.",
      ),
    ],
  };
}

/** The people, the plan, and the components with their lots. */

import { figureText } from "../figures/figure.ts";
import { plain, UNKNOWN } from "../format/number.ts";
import { componentName, fluidName, solutionName } from "../protocol/names.ts";
import { lastOf } from "../record/standing.ts";
import { pairs, type Section, table } from "./blocks.ts";
import type { Report } from "./report.ts";
import { operators } from "./section-head.ts";
import { amountOf } from "./shown-values.ts";

/** The team by role, and who ran the pump from when. */
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

/** What was planned, and the components with their lots. */
export function planSection({ run: { course } }: Report): Section {
  const { plan, protocol } = course;
  const prime = (plan.prime ?? []).map(
    ({ fluid, ml }) => `${fluidName("in", fluid, protocol)} ${plain(ml)} mL`,
  );
  const components = lastOf(course.record.facts, "circuit")?.entry.components ?? [];
  return {
    id: "plan",
    title: "Plan and circuit",
    blocks: [
      pairs(
        ["full flow", `${figureText(course.fullFlow, 2)} (${course.fullFlow.working})`],
        ["arrest solution", solutionName(plan.solution ?? protocol.usualSolution, protocol)],
        ["target temperature", amountOf(plan.targetTemperature, "Cel")],
        ["heparin", amountOf(plan.heparinPerKg, "[IU]/kg")],
        ["wanted haematocrit", amountOf(plan.targetHaematocrit, "%")],
        ["prime", prime.join(", ") || UNKNOWN],
      ),
      table(
        "Components",
        ["Component", "Size", "Lot", "Expires"],
        components.map(({ component, size, lot, expires }) => [
          componentName(component, protocol),
          size ?? "",
          lot ?? "",
          expires ?? "",
        ]),
        "No component recorded.",
      ),
    ],
  };
}

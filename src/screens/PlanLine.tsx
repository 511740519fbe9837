/** The patient and the plan in one row; allergies always first. */
import { Text } from "ink";
import { memo } from "react";
import { surfaceOf } from "../figures/body-surface.ts";
import type { Course } from "../figures/run.ts";
import { fixed, plain } from "../format/number.ts";
import { harmless } from "../format/text.ts";
import { solutionOf } from "../protocol/protocol.ts";
import { cutTo } from "./fit.ts";

/** What is known of the patient and the plan, in the order in which it is asked for. */
function planParts(course: Course): string[] {
  const { patient, plan, protocol, fullFlow } = course;
  const area = surfaceOf(course).value;
  return [
    patient.weight === undefined ? "no weight yet" : `${plain(patient.weight)} kg`,
    area === null ? "" : `${fixed(area, 2)} m²`,
    fullFlow.value === null ? "" : `full ${fixed(fullFlow.value, 2)} L/min`,
    solutionOf(protocol, plan.solution)?.name ?? "",
    harmless(plan.operation ?? ""),
    protocol.name,
  ].filter((part) => part !== "");
}

export const PlanLine = memo(function PlanLine({ course, columns }: { course: Course; columns: number }) {
  const allergies = harmless(course.patient.allergies ?? "");
  const warned = allergies === "" ? "" : ` ALLERGIES: ${cutTo(allergies, Math.floor(columns / 2))} `;
  return (
    <Text wrap="truncate">
      {warned === "" ? null : (
        <Text bold inverse>
          {warned}
        </Text>
      )}
      <Text dimColor>{` ${cutTo(planParts(course).join(" · "), columns - warned.length - 2)}`}</Text>
    </Text>
  );
});

/** Handover, background: who lies there, what was planned, with what, and by whom. */
import { harmless } from "../format/text.ts";
import { componentName, solutionName } from "../protocol/names.ts";
import { lastOf } from "../record/standing.ts";
import type { Run } from "./run.ts";
import { toldWords } from "./told-words.ts";

/** Lines of words from the record; what a relief has to know and nobody wrote down is said to be missing. */
export function background({ course }: Run): readonly string[] {
  const { patient, plan, protocol, record } = course;
  const { operation, prime, tubing, ...planned } = plan;
  const people = lastOf(record.facts, "team")?.entry.people ?? [];
  const cannulas = (lastOf(record.facts, "circuit")?.entry.components ?? []).filter(({ component }) =>
    /cannula|vent/.test(component),
  );
  const solution = solutionName(plan.solution ?? protocol.usualSolution, protocol);
  return [
    `patient: ${words(toldWords({ ...patient, allergies: undefined })) || "not recorded"}`,
    `allergies: ${patient.allergies ?? "not recorded"} · operation: ${operation ?? "not recorded"}`,
    `plan: ${words(toldWords({ ...planned, solution })) || "not recorded"}`,
    `cannulas: ${words(cannulas.map(({ component, size }) => `${componentName(component, protocol)} ${size ?? ""}`.trim())) || "not recorded"}`,
    ...(people.length > 0 ? [`team: ${words(people.map(({ role, who }) => `${role} ${who}`))}`] : []),
  ].map(harmless);
}

const words = (parts: readonly string[]): string => parts.join(", ");

/** A unit's protocol: everything it decides, in one documented file that a case carries along. */
import * as z from "zod";
import { route, solution } from "./arrest.ts";
import { body } from "./body.ts";
import { checklist } from "./checklists.ts";
import { circuit } from "./circuit.ts";
import { coagulation } from "./coagulation.ts";
import { drug } from "./drugs.ts";
import { quoted } from "./fault.ts";
import { fluidIn, fluidOut } from "./fluids.ts";
import { distinct } from "./lists.ts";
import { mark } from "./marks.ts";
import { instead } from "./nearest.ts";
import { shownUnits } from "./units.ts";
import { oxygen, temperature, watch } from "./watch.ts";
import { shownName, slug } from "./words.ts";

export const PROTOCOL_FORMAT = "pumpside-protocol";
export const PROTOCOL_VERSION = 1;

const fieldName = z.string().min(1).max(60);

const protocolShape = z.looseObject({
  format: z.literal(PROTOCOL_FORMAT),
  version: z.literal(PROTOCOL_VERSION),
  name: shownName,
  shown: shownUnits,
  body,
  coagulation,
  solutions: distinct(solution, "id").min(1),
  /** The solution a dose means when the plan names none. */
  usualSolution: slug,
  /** Whether the crystalloid part of arrest solution counts as fluid in (some units discard it). */
  solutionCountsAsFluid: z.boolean(),
  /** The routes the unit gives it by; left out, all that the record knows. */
  routes: distinct(route, "id").optional(),
  temperature,
  oxygen,
  watch,
  fluidsIn: distinct(fluidIn, "letter", "id"),
  fluidsOut: distinct(fluidOut, "letter", "id"),
  drugs: distinct(drug, "id"),
  marks: distinct(mark, "letter", "id"),
  circuit,
  /** What the reading form asks for, by the record's names, in this order. */
  readingFields: z.array(fieldName).max(100),
  gasFields: z.array(fieldName).max(100),
  checklists: distinct(checklist, "id", "letter"),
  operators: z.array(z.string().min(1).max(8)).max(200),
  /** A key of the unit's own for a stroke of the table, by the stroke's name. */
  keys: z.record(z.string(), z.string().length(1)).optional(),
});

export const protocolSchema = protocolShape.superRefine(
  ({ solutions, usualSolution }, context) => {
    const ids = solutions.map((one) => one?.id).filter((id) => typeof id === "string");
    if (ids.includes(usualSolution) || typeof usualSolution !== "string") return;
    context.addIssue({
      code: "custom",
      message: `no solution of this protocol has the id ${quoted(usualSolution)}`,
      path: ["usualSolution"],
      params: { suggestion: instead(usualSolution, ids) },
    });
  },
  { when: ({ value }) => Array.isArray((value as { solutions?: unknown } | undefined)?.solutions) },
);

export type Protocol = z.infer<typeof protocolSchema>;

/** The solution with that name, else the usual one. */
export const solutionOf = (protocol: Protocol, id?: string) =>
  protocol.solutions.find((one) => one.id === id) ??
  protocol.solutions.find((one) => one.id === protocol.usualSolution);

/** The part of a solution that is crystalloid: 0.2 for four of blood to one of crystalloid, 0.8 for one to four. */
export function crystalloidPart({ blood, crystalloid }: { blood: number; crystalloid: number }): number {
  const parts = blood + crystalloid;
  return parts === 0 ? 0 : crystalloid / parts;
}

/** A unit's protocol: everything it decides, in one documented file that a case carries along. */
import * as z from "zod";
import { solution } from "./arrest.ts";
import { body } from "./body.ts";
import { checklist } from "./checklists.ts";
import { circuit } from "./circuit.ts";
import { coagulation } from "./coagulation.ts";
import { distinct, slug } from "./decision.ts";
import { drug } from "./drugs.ts";
import { fluidIn, fluidOut } from "./fluids.ts";
import { mark } from "./marks.ts";
import { shownUnits } from "./units.ts";
import { oxygen, temperature, watch } from "./watch.ts";

export const PROTOCOL_FORMAT = "pumpside-protocol";

export const protocolSchema = z
  .looseObject({
    format: z.literal(PROTOCOL_FORMAT),
    version: z.literal(1),
    name: z.string().min(1),
    shown: shownUnits,
    body,
    coagulation,
    solutions: distinct(solution, "id").min(1),
    /** The solution a dose means when the plan names none. */
    usualSolution: slug,
    /** Whether the crystalloid part of arrest solution counts as fluid in (some units discard it). */
    solutionCountsAsFluid: z.boolean(),
    temperature,
    oxygen,
    watch,
    fluidsIn: distinct(fluidIn, "letter", "id"),
    fluidsOut: distinct(fluidOut, "letter", "id"),
    drugs: distinct(drug, "id"),
    marks: distinct(mark, "letter", "id"),
    circuit,
    readingFields: z.array(z.string()),
    gasFields: z.array(z.string()),
    checklists: distinct(checklist, "id", "letter"),
    operators: z.array(z.string().min(1).max(8)),
    /** A key of the unit's own for a stroke of the table, by the stroke's name. */
    keys: z.record(z.string(), z.string().length(1)).optional(),
  })
  .refine((protocol) => protocol.solutions.some(({ id }) => id === protocol.usualSolution), {
    error: "usualSolution names no solution of this protocol",
    path: ["usualSolution"],
  });

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

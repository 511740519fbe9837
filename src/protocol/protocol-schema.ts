/** The schema of a unit's protocol: what every setting may be, and what it decides. */
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
import { PROTOCOL_FORMAT, PROTOCOL_VERSION } from "./protocol.ts";
import { shownUnits } from "./units.ts";
import { oxygen, temperature, watch } from "./watch.ts";
import { shownName, slug } from "./words.ts";

const fieldName = z.string().min(1).max(60);

const protocolShape = z.looseObject({
  format: z.literal(PROTOCOL_FORMAT),
  version: z.literal(PROTOCOL_VERSION),
  name: shownName,
  shown: shownUnits,
  body,
  coagulation,
  solutions: distinct(solution, "id").min(1).describe("arrest solutions"),
  usualSolution: slug.describe("id of the solution that a dose means when the plan names none"),
  solutionCountsAsFluid: z
    .boolean()
    .describe("whether the crystalloid part of arrest solution counts as fluid in (some units discard it)"),
  routes: distinct(route, "id")
    .describe("routes the unit gives it by; left out, all that the record knows")
    .optional(),
  temperature,
  oxygen,
  watch,
  fluidsIn: distinct(fluidIn, "letter", "id").describe("fluids that go in"),
  fluidsOut: distinct(fluidOut, "letter", "id").describe("volumes that come out, urine apart"),
  drugs: distinct(drug, "id").describe("drugs completed as they are typed"),
  marks: distinct(mark, "letter", "id").describe("milestones and spans, by the letter typed after m"),
  circuit,
  readingFields: z.array(fieldName).max(100).describe("what the reading form asks for, in this order"),
  gasFields: z.array(fieldName).max(100).describe("what the gas form asks for, in this order"),
  checklists: distinct(checklist, "id", "letter").describe("checklists, worded by the unit"),
  operators: z.array(z.string().min(1).max(8)).max(200).describe("initials of those who run the pump"),
  keys: z
    .record(z.string(), z.string().length(1))
    .describe("keys of the unit's own, by the stroke's name")
    .optional(),
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

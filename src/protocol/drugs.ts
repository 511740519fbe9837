/** Drugs that are completed as they are typed. */
import * as z from "zod";
import { shownName, slug, sourceText } from "./words.ts";

export const drug = z.looseObject({
  id: slug,
  name: shownName,
  unit: z.string().min(1).max(24).describe("UCUM code of the unit that a bare number means"),
  usualDose: z.number().positive().describe("the amount offered when only the name is typed").optional(),
  askSecondPerson: z.boolean().describe("whether the initials of a second person are asked for").optional(),
  source: sourceText.optional(),
});

export type Drug = z.infer<typeof drug>;

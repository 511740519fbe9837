/** Drugs that are completed as they are typed. */
import * as z from "zod";
import { shownName, slug, sourceText } from "./words.ts";

export const drug = z.looseObject({
  id: slug,
  name: shownName,
  /** UCUM code of the unit a bare number means. */
  unit: z.string().min(1).max(24),
  usualDose: z.number().positive().optional(),
  askSecondPerson: z.boolean().optional(),
  source: sourceText.optional(),
});

export type Drug = z.infer<typeof drug>;

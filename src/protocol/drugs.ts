/** Drugs that are completed as they are typed. */
import * as z from "zod";
import { slug } from "./decision.ts";

export const drug = z.looseObject({
  id: slug,
  name: z.string().min(1),
  /** UCUM code of the unit a bare number means. */
  unit: z.string().min(1),
  usualDose: z.number().positive().optional(),
  askSecondPerson: z.boolean().optional(),
  source: z.string().optional(),
});

export type Drug = z.infer<typeof drug>;

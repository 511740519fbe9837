/** What a unit decides about its arrest solutions and the ways they take to the heart. */
import * as z from "zod";
import { decision, range } from "./decision.ts";
import { shownName, slug, sourceText } from "./words.ts";

/** A planned dose: so much a kilogram or a fixed volume, never above the ceiling. */
const plannedDose = z
  .looseObject({
    perKg: decision("mL/kg", 0.5, 100).optional(),
    fixed: decision("mL", 10, 5000).optional(),
    ceiling: decision("mL", 10, 5000).optional(),
  })
  .refine((dose) => (dose.perKg === undefined) !== (dose.fixed === undefined), {
    error: "a planned dose is either perKg or fixed, one of the two",
    params: { suggestion: "keep the one that your unit goes by" },
  });

export const solution = z.looseObject({
  id: slug,
  name: shownName,
  /** Parts of blood to parts of crystalloid: 4 and 1 for "4:1 blood", 1 and 4 for "1:4". */
  blood: z.number().min(0).max(100),
  crystalloid: z.number().min(0).max(100),
  ratioSource: sourceText.optional(),
  first: plannedDose.optional(),
  repeat: plannedDose.optional(),
  /** From the end of one dose to the next; left out where one dose is meant to last. */
  interval: decision("min", 1, 300).optional(),
});

/** A route the unit uses, with the pressure it wants there. */
export const route = z.looseObject({
  id: z.enum(["root", "left-ostium", "right-ostium", "coronary-sinus", "graft"]),
  name: shownName,
  pressure: range("mm[Hg]", 0, 400).optional(),
});

export type Solution = z.infer<typeof solution>;
export type PlannedDose = z.infer<typeof plannedDose>;
export type DoseRoute = z.infer<typeof route>;

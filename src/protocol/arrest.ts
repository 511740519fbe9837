/** What a unit decides about its arrest solutions and the ways they take to the heart. */
import * as z from "zod";
import { bounded, decision, range } from "./numbers.ts";
import { shownName, slug, sourceText } from "./words.ts";

/** A planned dose: so much a kilogram or a fixed volume, never above the ceiling. */
const plannedDose = z
  .looseObject({
    perKg: decision("mL/kg", 0.5, 100, "dose by weight").optional(),
    fixed: decision("mL", 10, 5000, "dose whatever the weight").optional(),
    ceiling: decision("mL", 10, 5000, "the most a dose may be").optional(),
  })
  .refine((dose) => (dose.perKg === undefined) !== (dose.fixed === undefined), {
    error: "a planned dose is either perKg or fixed, one of the two",
    params: { suggestion: "keep the one that your unit goes by" },
  });

export const solution = z.looseObject({
  id: slug,
  name: shownName,
  blood: bounded("1", 0, 100).describe('parts of blood: 4 for "4:1 blood", 1 for "1:4"'),
  crystalloid: bounded("1", 0, 100).describe('parts of crystalloid: 1 for "4:1 blood", 4 for "1:4"'),
  ratioSource: sourceText.describe("where the ratio was taken from").optional(),
  first: plannedDose.describe("the first dose").optional(),
  repeat: plannedDose.describe("every dose after it").optional(),
  interval: decision(
    "min",
    1,
    300,
    "from the end of a dose to the next; left out where one is to last",
  ).optional(),
});

export const route = z.looseObject({
  id: z.enum(["root", "left-ostium", "right-ostium", "coronary-sinus", "graft"]),
  name: shownName,
  pressure: range("mm[Hg]", 0, 400, "pressure wanted on this route").optional(),
});

export type Solution = z.infer<typeof solution>;
export type PlannedDose = z.infer<typeof plannedDose>;
export type DoseRoute = z.infer<typeof route>;

/** Prime, tubing and components, in words that name no maker. */
import * as z from "zod";
import { distinct } from "./lists.ts";
import { bounded, decision } from "./numbers.ts";
import { shownName, slug, sourceText } from "./words.ts";

const primeFluid = z.looseObject({
  fluid: slug.describe("id of a fluid in fluidsIn"),
  name: shownName,
  ml: bounded("mL", 0, 5000),
  source: sourceText.optional(),
});

const tubing = z.looseObject({
  id: slug,
  name: shownName,
  boreMm: z
    .number()
    .positive()
    .max(30)
    .meta({ unit: "mm" })
    .describe("inner width; a metre holds π/4·bore² mL"),
  source: sourceText.optional(),
});

const component = z.looseObject({ id: slug, name: shownName });

export const circuit = z
  .looseObject({
    prime: distinct(primeFluid, "fluid").describe("the usual prime"),
    tubing: distinct(tubing, "id").describe("the bores whose lengths are asked for"),
    components: distinct(component, "id").describe("what lot numbers are asked for"),
    packedCellHaematocrit: decision("%", 30, 90, "haematocrit of packed red cells in the figures"),
  })
  .describe("prime, tubing and components");

export type Circuit = z.infer<typeof circuit>;

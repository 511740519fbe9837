/** Prime, tubing and components, in words that name no maker. */
import * as z from "zod";
import { bounded, decision } from "./decision.ts";
import { distinct } from "./lists.ts";
import { shownName, slug, sourceText } from "./words.ts";

const primeFluid = z.looseObject({
  fluid: slug,
  name: shownName,
  ml: bounded("mL", 0, 5000),
  source: sourceText.optional(),
});

const tubing = z.looseObject({
  id: slug,
  name: shownName,
  /** Inner width; a metre of it holds π/4·bore² millilitres. */
  boreMm: z.number().positive().max(30).meta({ unit: "mm" }),
  source: sourceText.optional(),
});

export const circuit = z.looseObject({
  prime: distinct(primeFluid, "fluid"),
  tubing: distinct(tubing, "id"),
  components: distinct(z.looseObject({ id: slug, name: shownName }), "id"),
  packedCellHaematocrit: decision("%", 30, 90),
});

export type Circuit = z.infer<typeof circuit>;

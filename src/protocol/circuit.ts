/** Prime, tubing and components, in words that name no maker. */
import * as z from "zod";
import { decision, slug } from "./decision.ts";

export const circuit = z.looseObject({
  prime: z.array(z.looseObject({ fluid: slug, name: z.string(), ml: z.number().min(0).max(5000).meta({ unit: "mL" }) })),
  primeSource: z.string().optional(),
  tubing: z.array(
    z.looseObject({ id: slug, name: z.string(), boreMm: z.number().positive().max(30).meta({ unit: "mm" }), source: z.string().optional() }),
  ),
  components: z.array(z.looseObject({ id: slug, name: z.string().min(1) })),
  packedCellHaematocrit: decision("%", 30, 90),
});

export type Circuit = z.infer<typeof circuit>;

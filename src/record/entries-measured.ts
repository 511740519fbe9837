/** Entries about what was measured: ACT, readings, blood gas. */
import * as z from "zod";
import { between, entryOf, seconds } from "./base.ts";
import { GAS_VALUES, type Quantity, READINGS } from "./quantities.ts";

/** Any subset of a table's quantities: what was not entered stays unknown. */
function someOf<N extends string>(table: Record<N, Quantity>) {
  const shape = {} as Record<N, z.ZodOptional<z.ZodNumber>>;
  for (const key of Object.keys(table) as N[]) {
    const { name, unit } = table[key];
    shape[key] = between(-10_000, 100_000, unit, name).optional();
  }
  return z.looseObject(shape);
}

export const act = entryOf("act", { seconds });
export const readings = entryOf("readings", { values: someOf(READINGS) });
export const gas = entryOf("gas", {
  sample: z.enum(["arterial", "venous"]),
  values: someOf(GAS_VALUES),
  /** `alpha-stat` is reported at 37 °C, `ph-stat` corrected to the patient. */
  convention: z.enum(["alpha-stat", "ph-stat"]).optional(),
});

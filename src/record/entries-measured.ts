/** Entries about what was measured: ACT, readings, blood gas. */
import * as z from "zod";
import { entryOf, seconds } from "./base.ts";
import { GAS_VALUES, READINGS, someOf } from "./quantities.ts";

export const act = entryOf("act", { seconds });
export const readings = entryOf("readings", { values: someOf(READINGS) });
export const gas = entryOf("gas", {
  sample: z.enum(["arterial", "venous"]),
  values: someOf(GAS_VALUES),
  /** `alpha-stat` is reported at 37 °C, `ph-stat` corrected to the patient. */
  convention: z.enum(["alpha-stat", "ph-stat"]).optional(),
});

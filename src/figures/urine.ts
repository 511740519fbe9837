/** Urine by weight and time. */
import { fixed, plain } from "../format/number.ts";
import { derived } from "./derived.ts";
import type { Figure } from "./figure.ts";

/** Urine in mL/kg/h; urine in mL, weight in kg, time in hours. Nothing before any time has passed. */
export const urinePerKgPerHour = (urine: Figure, weight: Figure, hours: Figure): Figure =>
  derived("mL/kg/h", [urine, weight, hours], (ml, kg, time) => ({
    value: time > 0 ? ml / kg / time : null,
    working: time > 0 ? `${plain(ml)} mL / ${plain(kg)} kg / ${fixed(time, 2)} h` : "no time has passed",
  }));

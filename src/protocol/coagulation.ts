/** What a unit decides about heparin, ACT and protamine. */
import * as z from "zod";
import { decision } from "./decision.ts";

export const coagulation = z.looseObject({
  /** Dose before bypass, and how strong the ampoules are. */
  heparinPerKg: decision("[IU]/kg", 50, 1000),
  heparinStrength: decision("[IU]/mL", 100, 25_000),
  /** What one milligram of heparin stands for where a unit counts in milligrams. */
  heparinIuPerMg: decision("[IU]/mg", 50, 250),
  actForCannulation: decision("s", 100, 1000),
  actForBypass: decision("s", 100, 1000),
  actRecheck: decision("min", 5, 180),
  /** Milligrams of protamine for each 100 IU of heparin. */
  protamineRatio: decision("mg/100[IU]", 0.1, 3),
  protamineBase: z.enum(["first", "total"]),
  protamineStrength: decision("mg/mL", 1, 50),
  protamineCap: decision("mg/100[IU]", 0.5, 5),
});

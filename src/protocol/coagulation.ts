/** What a unit decides about heparin, ACT and protamine. */
import * as z from "zod";
import { decision } from "./numbers.ts";

export const coagulation = z
  .looseObject({
    heparinPerKg: decision("[IU]/kg", 50, 1000, "heparin before bypass"),
    heparinStrength: decision("[IU]/mL", 100, 25_000, "how strong the heparin in the ampoule is"),
    heparinIuPerMg: decision(
      "[IU]/mg",
      50,
      250,
      "what a milligram stands for where heparin is counted in them",
    ),
    actForCannulation: decision(
      "s",
      100,
      1000,
      "ACT wanted before suckers and cannulation, met at this value",
    ),
    actForBypass: decision("s", 100, 1000, "ACT wanted before and on bypass, met at this value"),
    actRecheck: decision("min", 5, 180, "time from one ACT on bypass to the next"),
    protamineRatio: decision("mg/(100.[IU])", 0.1, 3, "protamine for each 100 IU of heparin"),
    protamineBase: z.enum(["first", "total"]).describe("the heparin that protamine is reckoned from"),
    protamineStrength: decision("mg/mL", 1, 50, "how strong the protamine in the ampoule is"),
    protamineCap: decision("mg/(100.[IU])", 0.5, 5, "the most protamine in all for each 100 IU of heparin"),
  })
  .describe("heparin, ACT and protamine");

/** The units a unit's people read and type; the record keeps canonical ones whatever is set here. */
import * as z from "zod";

export const shownUnits = z
  .looseObject({
    heparin: z.enum(["[IU]", "mg"]),
    gasPressure: z.enum(["mm[Hg]", "kPa"]).describe("unit of pO2 and pCO2"),
    glucose: z.enum(["mmol/L", "mg/dL"]),
    haemoglobin: z.enum(["g/dL", "g/L"]),
    lactate: z.enum(["mmol/L", "mg/dL"]),
  })
  .describe("units that are shown and typed");

export type ShownUnits = z.infer<typeof shownUnits>;

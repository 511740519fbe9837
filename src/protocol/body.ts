/** What a unit decides about size, blood volume and flow. */
import * as z from "zod";
import { rising } from "./lists.ts";
import { bounded, decision } from "./numbers.ts";
import { sourceText } from "./words.ts";

/** One step of a table that runs over weight or temperature: it holds up to and including `upTo`. */
const band = (unit: string, stepUnit: string, most: number) =>
  z.looseObject({
    upTo: z
      .number()
      .positive()
      .meta({ unit: stepUnit })
      .nullable()
      .describe("the step holds up to and including this; null in the last: for all above"),
    value: bounded(unit, 0, most),
    source: sourceText.optional(),
  });

export const body = z
  .looseObject({
    surfaceFormula: z.enum(["dubois", "mosteller", "haycock"]).describe("formula of the body surface"),
    bloodVolumeRule: z
      .enum(["bands", "nadler"])
      .describe("blood volume by weight bands, or by height, weight and sex after Nadler"),
    bloodVolumeBands: rising(band("mL/kg", "kg", 150)).describe("blood volume by weight"),
    flowIndex: decision("L/min/m2", 1, 4, "full flow by body surface at normal temperature"),
    flowByTemperature: rising(band("L/min/m2", "Cel", 4))
      .describe("flow by body surface at lower temperatures")
      .optional(),
    flowByWeight: rising(band("mL/kg/min", "kg", 300))
      .describe("full flow by weight, for the small")
      .optional(),
    fullFlowBy: z.enum(["index", "weight"]).describe("which of the two sets full flow"),
    leanMassAboveBmi: decision(
      "kg/m2",
      25,
      60,
      "from this body mass index on, lean mass is shown too",
    ).optional(),
  })
  .describe("size, blood volume and flow");

export type Band = z.infer<ReturnType<typeof band>>;

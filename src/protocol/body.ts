/** What a unit decides about size, blood volume and flow. */
import * as z from "zod";
import { bounded, decision } from "./decision.ts";
import { rising } from "./lists.ts";
import { sourceText } from "./words.ts";

/** One step of a table that runs over weight or temperature: it holds up to and including `upTo`. */
const band = (unit: string, stepUnit: string, most: number) =>
  z.looseObject({
    upTo: z.number().positive().meta({ unit: stepUnit }).nullable(),
    value: bounded(unit, 0, most),
    source: sourceText.optional(),
  });

export const body = z.looseObject({
  surfaceFormula: z.enum(["dubois", "mosteller", "haycock"]),
  bloodVolumeRule: z.enum(["bands", "nadler"]),
  bloodVolumeBands: rising(band("mL/kg", "kg", 150)),
  /** Litres a minute for each square metre at full flow and normal temperature. */
  flowIndex: decision("L/min/m2", 1, 4),
  flowByTemperature: rising(band("L/min/m2", "Cel", 4)).optional(),
  flowByWeight: rising(band("mL/kg/min", "kg", 300)).optional(),
  /** Which of the two sets full flow: the index, or the weight table for the small. */
  fullFlowBy: z.enum(["index", "weight"]),
  leanMassAboveBmi: decision("kg/m2", 25, 60).optional(),
});

export type Band = z.infer<ReturnType<typeof band>>;

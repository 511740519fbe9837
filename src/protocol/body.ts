/** What a unit decides about size, blood volume and flow. */
import * as z from "zod";
import { decision } from "./decision.ts";

/** One step of a table that runs over weight or temperature: it holds up to and including `upTo`. */
const band = (unit: string, stepUnit: string, most: number) =>
  z.looseObject({
    upTo: z.number().positive().meta({ unit: stepUnit }).nullable(),
    value: z.number().min(0).max(most).meta({ unit }),
    source: z.string().optional(),
  });

const bands = (unit: string, stepUnit: string, most: number) =>
  z
    .array(band(unit, stepUnit, most))
    .min(1)
    .refine((list) => list.every((step, i) => i === list.length - 1 || isBelow(step.upTo, list[i + 1]?.upTo)), {
      error: "the steps of a table rise, and only the last may be open (null)",
    });

const isBelow = (one: number | null, next: number | null | undefined) =>
  one !== null && (next === null || next === undefined || one < next);

export const body = z.looseObject({
  surfaceFormula: z.enum(["dubois", "mosteller", "haycock"]),
  bloodVolumeRule: z.enum(["bands", "nadler"]),
  bloodVolumeBands: bands("mL/kg", "kg", 150),
  /** Litres a minute for each square metre at full flow and normal temperature. */
  flowIndex: decision("L/min/m2", 1, 4),
  flowByTemperature: bands("L/min/m2", "Cel", 4).optional(),
  flowByWeight: bands("mL/kg/min", "kg", 300).optional(),
  /** Which of the two sets full flow: the index, or the weight table for the small. */
  fullFlowBy: z.enum(["index", "weight"]),
  leanMassAboveBmi: decision("kg/m2", 25, 60).optional(),
});

export type Band = z.infer<ReturnType<typeof band>>;

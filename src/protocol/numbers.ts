/** Schemas of the numbers that a unit decides, each with where it was taken from. */
import * as z from "zod";
import { sourceText } from "./words.ts";

/** A number in a UCUM unit between plausible bounds. */
export const bounded = (unit: string, lowest: number, highest: number) =>
  z.number().min(lowest).max(highest).meta({ unit });

/** A decided number in a UCUM unit between plausible bounds; `source` says on whose word, `says` what it decides. */
export const decision = (unit: string, lowest: number, highest: number, says: string) =>
  z.looseObject({ value: bounded(unit, lowest, highest), source: sourceText.optional() }).describe(says);

/** A pair of decided limits, the low one first. */
export const range = (unit: string, lowest: number, highest: number, says: string) =>
  z
    .looseObject({
      low: bounded(unit, lowest, highest),
      high: bounded(unit, lowest, highest),
      source: sourceText.optional(),
    })
    .refine((limits) => limits.low <= limits.high, {
      error: "the low limit lies above the high one",
      params: { suggestion: "change them over, or put the wrong one right" },
      path: ["low"],
    })
    .describe(says);

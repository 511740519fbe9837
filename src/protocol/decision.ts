/** A number that a unit decides for itself, with where it was taken from. */
import * as z from "zod";

export const COMMON_PRACTICE = "common practice, no source";
export const FROM_MEMORY = "from memory";

export type Decision = { value: number; source?: string | undefined };

const bounds = (unit: string, lowest: number, highest: number) =>
  z.number().min(lowest).max(highest).meta({ unit });

/** A decided number in a UCUM unit between plausible bounds; `source` says on whose word. */
export const decision = (unit: string, lowest: number, highest: number) =>
  z.looseObject({ value: bounds(unit, lowest, highest), source: z.string().optional() });

/** A pair of decided limits, the low one first. */
export const range = (unit: string, lowest: number, highest: number) =>
  z
    .looseObject({
      low: bounds(unit, lowest, highest),
      high: bounds(unit, lowest, highest),
      source: z.string().optional(),
    })
    .refine((limits) => limits.low <= limits.high, { error: "the low limit lies above the high one", path: ["low"] });

/** A short name used inside files: `blood-4-1`. */
export const slug = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, "a short name of small letters, digits and hyphens");

/** A letter or digit typed on an entry line. */
export const letter = z.string().regex(/^[a-z0-9]$/, "one small letter or digit");

/** A list whose members each have a `key` of their own, so that no stroke or name means two things. */
export const distinct = <T extends z.ZodObject>(member: T, ...keys: string[]) =>
  z.array(member).superRefine((list, context) => {
    for (const key of keys) {
      const seen = new Set<unknown>();
      list.forEach((item, place) => {
        const value = (item as Record<string, unknown>)[key];
        if (value !== undefined && seen.has(value)) {
          context.addIssue({ code: "custom", message: `"${value}" is used twice`, path: [place, key] });
        }
        seen.add(value);
      });
    }
  });

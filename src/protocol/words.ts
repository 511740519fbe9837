/** The words of a protocol: short names, letters, and text that fits a line of the screen. */
import * as z from "zod";

/** A short name used inside files: `blood-4-1`. */
export const slug = z
  .string()
  .max(40)
  .regex(/^[a-z0-9][a-z0-9-]*$/, "a short name of small letters, digits and hyphens")
  .describe("short name used inside files");

/** A letter or digit typed on an entry line. */
export const letter = z
  .string()
  .regex(/^[a-z0-9]$/, "one small letter or digit")
  .describe("the letter typed for it");

/** A letter typed behind millilitres: a digit would read as part of the number, and `l` as litres. */
export const volumeLetter = z
  .string()
  .regex(/^[a-km-z]$/, "one small letter, not l (which reads as litres) and no digit (part of the volume)")
  .describe("the letter typed behind the millilitres");

/** What people read: the name of a fluid, a drug, a solution. */
export const shownName = z.string().min(1).max(60).describe("name as it is shown");

/** A sentence people read: an item of a checklist. */
export const sentence = z.string().min(1).max(200).describe("sentence as it is shown");

/** On whose word a number stands. */
export const sourceText = z.string().max(400).describe("on whose word the number stands");

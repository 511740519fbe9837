/** What every entry carries, and the small types entries are made of. */
import * as z from "zod";
import { fromIso } from "../format/instant.ts";

/** ISO 8601 with an offset; what may not be a time at all is refused here, once. */
export const time = z
  .string()
  .refine(
    (text) => fromIso(text) !== null,
    "a time in ISO 8601 with its offset, such as 2026-03-04T10:42:30.000+00:00",
  )
  .meta({ format: "date-time" });

export const entryId = z.string().regex(/^e[1-9]\d*$/, "the id of an entry, such as e12");

const number = z.number();

/** A number within bounds, with its unit in UCUM. Each part that is chained would make the schema anew. */
export const between = (lowest: number, highest: number, unit: string, description?: string) =>
  number
    .check(z.gte(lowest), z.lte(highest))
    .register(z.globalRegistry, description === undefined ? { unit } : { unit, description });

/** The same for what is never nought. */
export const above0 = (highest: number, unit: string) =>
  number.check(z.positive(), z.lte(highest)).register(z.globalRegistry, { unit });

export const millilitres = between(0, 100_000, "mL");
export const seconds = between(0, 10_000, "s");
export const words = z.string().max(4000);
export const someWords = words.optional();
export const initials = z.string().max(12);
export const name = z.string().min(1).max(120);

const base = {
  /** `e` and the sequence number. */
  id: entryId,
  seq: z.int().min(1),
  /** When it happened: the time of the first key, or the time the person gave. */
  at: time,
  /** When it was written. */
  loggedAt: time,
  /** Initials of the person who ran the pump then. */
  by: initials,
  /** What the person typed, to the letter. */
  typed: words,
  note: someWords,
};

/** An entry of one kind. Keys we do not know are kept: a newer minor version may have written them. */
export const entryOf = <K extends string, T extends z.ZodRawShape>(kind: K, shape: T) =>
  z.looseObject({ ...base, kind: z.literal(kind), ...shape });

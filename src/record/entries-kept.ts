/** Entries about the record itself: putting right, striking out, and the clock. */
import * as z from "zod";
import { entryId, entryOf, words } from "./base.ts";

/** Fields no correction may touch: they say who wrote what, when. */
const FIXED_FIELDS = ["id", "seq", "kind", "loggedAt", "by", "typed"] as const;

export const amend = entryOf("amend", {
  target: entryId,
  changes: z
    .record(z.string(), z.json())
    .refine(
      (changes) => FIXED_FIELDS.every((field) => !(field in changes)),
      "a correction changes what happened, not who wrote it",
    ),
});
export const struck = entryOf("void", { target: entryId, reason: words });

export const clock = entryOf("clock", {
  /** How far the system clock moved against the session's own, in milliseconds; the record's time did not. */
  stepMs: z.number().meta({ unit: "ms" }),
});

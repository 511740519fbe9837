/** Milestones without a length, and spans that are on or off, each with the letter typed after `m`. */
import * as z from "zod";
import { letter, slug } from "./decision.ts";

export const mark = z.looseObject({
  letter,
  id: slug,
  name: z.string().min(1),
  sort: z.enum(["moment", "span"]),
  /** Ways of doing it (antegrade, retrograde), each with a second letter. */
  ways: z.array(z.looseObject({ letter, id: slug, name: z.string().min(1) })).optional(),
});

export type Mark = z.infer<typeof mark>;

/** Milestones without a length, and spans that are on or off, each with the letter typed after `m`. */
import * as z from "zod";
import { distinct } from "./lists.ts";
import { letter, shownName, slug } from "./words.ts";

const way = z.looseObject({ letter, id: slug, name: shownName });

export const mark = z.looseObject({
  letter,
  id: slug,
  name: shownName,
  sort: z.enum(["moment", "span"]),
  /** Ways of doing it (antegrade, retrograde), each with a second letter. */
  ways: distinct(way, "letter", "id").optional(),
});

export type Mark = z.infer<typeof mark>;

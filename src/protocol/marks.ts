/** Milestones without a length, and spans that are on or off, each with the letter typed after `m`. */
import * as z from "zod";
import { distinct } from "./lists.ts";
import { letter, shownName, slug } from "./words.ts";

const way = z.looseObject({ letter, id: slug, name: shownName });

export const mark = z.looseObject({
  letter,
  id: slug,
  name: shownName,
  sort: z.enum(["moment", "span"]).describe("a milestone without a length, or something that is on or off"),
  ways: distinct(way, "letter", "id").describe("ways of doing it, each with a second letter").optional(),
});

export type Mark = z.infer<typeof mark>;

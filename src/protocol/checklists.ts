/** Checklists as data: worded by the unit, ticked by key. */
import * as z from "zod";
import { distinct } from "./lists.ts";
import { letter, sentence, shownName, slug, sourceText } from "./words.ts";

const item = z.looseObject({
  id: slug,
  group: shownName.describe("the heading it stands under").optional(),
  text: sentence,
});

export const checklist = z.looseObject({
  id: slug,
  letter,
  name: shownName,
  remindAt: z
    .enum(["bypass-on", "bypass-off", "closing"])
    .describe("when open items are pointed out; no entry waits for them")
    .optional(),
  source: sourceText.optional(),
  items: distinct(item, "id"),
});

export type Checklist = z.infer<typeof checklist>;

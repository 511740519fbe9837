/** Checklists as data: worded by the unit, ticked by key. */
import * as z from "zod";
import { distinct } from "./lists.ts";
import { letter, sentence, shownName, slug, sourceText } from "./words.ts";

const item = z.looseObject({ id: slug, group: shownName.optional(), text: sentence });

export const checklist = z.looseObject({
  id: slug,
  letter,
  name: shownName,
  /** When what is still open is pointed out; the entry is taken all the same. */
  remindAt: z.enum(["bypass-on", "bypass-off", "closing"]).optional(),
  source: sourceText.optional(),
  items: distinct(item, "id"),
});

export type Checklist = z.infer<typeof checklist>;

/** Checklists as data: worded by the unit, ticked by key. */
import * as z from "zod";
import { distinct, letter, slug } from "./decision.ts";

const item = z.looseObject({ id: slug, group: z.string().optional(), text: z.string().min(1) });

export const checklist = z.looseObject({
  id: slug,
  letter,
  name: z.string().min(1),
  /** When what is still open is pointed out; the entry is taken all the same. */
  remindAt: z.enum(["bypass-on", "bypass-off", "closing"]).optional(),
  source: z.string().optional(),
  items: distinct(item, "id"),
});

export type Checklist = z.infer<typeof checklist>;

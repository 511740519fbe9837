/** Writing down the items of a checklist, a group at a time. */
import type { Checklist } from "./checklists.ts";

type Items = Checklist["items"];

/** Items by id, under one heading. */
export const grouped = (group: string, items: Readonly<Record<string, string>>): Items =>
  Object.entries(items).map(([id, text]) => ({ id, group, text }));

/** The checklists that both shipped protocols carry, worded by us. */
import type { Checklist } from "./checklists.ts";
import { CITED } from "./citations.ts";

export const defaultChecklists: Checklist[] = [
  {
    id: "before-bypass",
    letter: "b",
    name: "Before bypass",
    remindAt: "bypass-on",
    source: CITED.beforeBypass,
    items: [{ id: "identity", group: "patient", text: "Patient and operation are the right ones" }],
  },
];

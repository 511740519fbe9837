/** Entries about the course of the run: spans, moments, orders, reminders, checks, incidents and notes. */
import * as z from "zod";
import { between, entryId, entryOf, name, time, words } from "./base.ts";

export const span = entryOf("span", {
  /** `bypass`, `clamp`, or the id of a span in the protocol. */
  what: name,
  state: z.enum(["on", "off"]),
  /** How it is done, where there are ways: the route of cerebral perfusion, the mode of ultrafiltration. */
  way: name.optional(),
});

export const moment = entryOf("moment", { what: name });

export const flow = entryOf("flow", {
  litresPerMinute: between(0, 15, "L/min").optional(),
  /** Of full flow: 1, 0.75, 0.5, 0.25. */
  fraction: between(0, 1, "1").optional(),
}).refine((order) => (order.litresPerMinute === undefined) !== (order.fraction === undefined), {
  error: "a flow order is either litres a minute or a fraction of full, one of the two",
});

export const target = entryOf("target", { celsius: between(0, 45, "Cel") });

export const reminder = entryOf("reminder", {
  dueAt: time,
  text: words,
  /** A reminder for the next dose takes the place of the solution's own interval. */
  about: z.enum(["dose", "other"]),
});
export const reminderDone = entryOf("reminder-done", { target: entryId });

export const check = entryOf("check", {
  checklist: name,
  item: name,
  state: z.enum(["done", "not-applicable", "open"]),
});

export const incident = entryOf("incident", { text: words });
export const note = entryOf("note", { text: words });

/** An advisory the person has seen and answered with a reason. */
export const acknowledged = entryOf("acknowledged", { advisory: name, reason: words });

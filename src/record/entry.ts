/** The kinds of entry there are. A switch over `kind` ends in `never`, so a new kind shows everywhere it matters. */
import * as z from "zod";
import * as ofCase from "./entries-case.ts";
import * as given from "./entries-given.ts";
import * as kept from "./entries-kept.ts";
import * as measured from "./entries-measured.ts";
import * as run from "./entries-run.ts";

export const entrySchema = z.discriminatedUnion("kind", [
  ofCase.opened,
  ofCase.closed,
  ofCase.reopened,
  ofCase.patient,
  ofCase.plan,
  ofCase.team,
  ofCase.circuit,
  ofCase.operator,
  run.span,
  run.moment,
  run.flow,
  run.target,
  run.reminder,
  run.reminderDone,
  run.check,
  run.incident,
  run.note,
  run.acknowledged,
  given.dose,
  given.volume,
  given.level,
  given.drug,
  measured.act,
  measured.readings,
  measured.gas,
  kept.amend,
  kept.struck,
  kept.clock,
]);

export type Entry = z.infer<typeof entrySchema>;
export type Kind = Entry["kind"];
export type EntryOf<K extends Kind> = Extract<Entry, { kind: K }>;

type Written = "id" | "seq" | "at" | "loggedAt" | "by" | "typed";

/** An entry before it is written: what a stroke or a form makes of what was typed. */
export type Draft = Entry extends infer E ? (E extends Entry ? Unwritten<E> : never) : never;
type Unwritten<E> = { [F in keyof E as string extends F ? never : F extends Written ? never : F]: E[F] };

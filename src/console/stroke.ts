/** What a stroke is: one record says its key, its name, what it asks and how its line is read. */

import type { Phase } from "../figures/phase.ts";
import type { Course, Run } from "../figures/run.ts";
import type { Instant } from "../format/instant.ts";
import type { Outcome } from "../format/outcome.ts";
import type { Draft } from "../record/entry.ts";
import type { Form } from "./form.ts";
import type { Line } from "./line.ts";

/** What a reader may look at: the run as it stands, and the moment the entry is for. */
export type Context = { readonly run: Run; readonly at: Instant };

type StrokeBase = {
  readonly key: string;
  /** A name of its own, by which a protocol can give it another key. */
  readonly id: string;
  /** What it enters, in the words of the trade. */
  readonly name: string;
  /** One word for the hint bar. */
  readonly short: string;
  /** What the line takes, for help and documentation. */
  readonly takes: string;
  /** Phases that make it likely; the hint bar shows it then. */
  readonly likely: readonly Phase[];
};

/** A stroke that opens the entry line. */
export type EntryStroke = StrokeBase & {
  readonly opens: "line";
  /** What the open line asks just now: short, beside the line. */
  readonly asks: (context: Context) => string;
  /** The entry the line means, or one sentence that says why it means none. */
  readonly read: (line: Line, context: Context) => Outcome<Draft>;
  /** Choices shown while the line is open: the letter, and what it stands for. */
  readonly choices?: (context: Context, text: string) => readonly (readonly [string, string])[];
  /** Rows shown in the panel while the line is open: a summary to be confirmed, a list of what is missing. */
  readonly shows?: (context: Context) => readonly string[];
  /** What is worth saying of an entry before it is written; it is taken all the same. */
  readonly reminds?: (draft: Draft, course: Course) => string | null;
  readonly example: string;
  /** Whether a closed case takes it. */
  readonly reopens?: true;
};

/** A stroke that opens something other than an entry line. */
export type ViewStroke = StrokeBase & {
  readonly opens: "put-right" | "checklists" | "find" | "help" | "panel" | "leave";
};

/** A stroke that opens a form. */
export type FormStroke = StrokeBase & { readonly opens: "form"; readonly form: Form };

export type Stroke = EntryStroke | FormStroke | ViewStroke;

/** The state of the run screen: the record, what is saved, and the mode with what is half typed. */
import type { Instant } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Texts } from "./form.ts";
import type { Key } from "./key.ts";

/** Text being typed, with the place of the cursor in code points. */
export type Typing = { readonly text: string; readonly cursor: number };

export type LineMode = Typing & {
  readonly name: "line";
  readonly stroke: string;
  /** The time of the first key: the time of the entry. */
  readonly started: Instant;
  /** Why Enter wrote nothing. */
  readonly fault: string | null;
};

export type PutRightMode = Typing & {
  readonly name: "put-right";
  /** The id of the entry that is picked. */
  readonly target: string;
  readonly started: Instant;
  readonly fault: string | null;
};

export type FormMode = {
  readonly name: "form";
  readonly stroke: string;
  /** The id of the field that is being typed, and the cursor in it. */
  readonly field: string;
  readonly cursor: number;
  readonly texts: Texts;
  /** How far the figures beside the fields have been turned over, in pages. */
  readonly page: number;
  readonly started: Instant;
  readonly fault: string | null;
};

export type ChecklistMode = {
  readonly name: "checklist";
  /** The id of the list that is open; `null` while one is chosen. */
  readonly list: string | null;
  /** The place of the chosen list, or of the chosen item. */
  readonly item: number;
};

/** What Esc sets aside and brings back. */
export type HalfTyped = LineMode | PutRightMode | FormMode;

export type FindMode = Typing & { readonly name: "find"; readonly chosen: number; readonly started: Instant };

export type Mode =
  | { readonly name: "plain" }
  | LineMode
  | PutRightMode
  | FormMode
  | ChecklistMode
  | FindMode
  | { readonly name: "help"; readonly scroll: number }
  | { readonly name: "leave" }
  /** The clock reads earlier than the last entry by so much: asked about before anything is written. */
  | { readonly name: "clock-early"; readonly byMs: number };

export const PANELS = ["log", "live", "trends", "balances", "quality", "spans"] as const;
export type Panel = (typeof PANELS)[number];

export type Model = {
  readonly file: CaseFile;
  /** The highest sequence number that is on the disk. */
  readonly saved: number;
  /** Why the last save failed; `null` while saving works. */
  readonly trouble: string | null;
  /** The same of the second folder; `null` where there is none. */
  readonly copy: { readonly seq: number; readonly trouble: string | null } | null;
  readonly mode: Mode;
  /** Lines set aside by Esc, the latest last. */
  readonly aside: readonly HalfTyped[];
  /** What the console last had to say, one sentence. */
  readonly notice: string | null;
  readonly panel: Panel;
  /** How much of the run the trends show. */
  readonly window: "hour" | "run";
  /** How many log lines the view has been scrolled back. */
  readonly scroll: number;
  /** What there was before the last Esc, should it turn out to be the head of a key torn in transit. */
  readonly beforeEscape: { readonly mode: Mode; readonly aside: Model["aside"] } | null;
};

/** What `update` hears of: keys, and news from the store. */
export type Message =
  | Key
  | { readonly name: "saved"; readonly seq: number }
  | { readonly name: "not-saved"; readonly why: string }
  | { readonly name: "clock-stepped"; readonly stepMs: number }
  /** The highest sequence number that is in the second folder too. */
  | { readonly name: "copied"; readonly seq: number }
  | { readonly name: "not-copied"; readonly why: string }
  /** What the person has to be told, a sentence or two. */
  | { readonly name: "told"; readonly words: string }
  /** A whole stroke typed as one line, where there is no screen to type it on. */
  | { readonly name: "typed"; readonly line: string };

/** What the world is asked to do. */
export type Effect = { readonly do: "save"; readonly file: CaseFile } | { readonly do: "leave" };

export type Step = { readonly model: Model; readonly effects: readonly Effect[] };

/** A step that asks nothing of the world. */
export const still = (model: Model): Step => ({ model, effects: [] });

/** The run screen of a case that is all on the disk. */
export const openModel = (file: CaseFile): Model => ({
  file,
  saved: file.entries.length,
  trouble: null,
  copy: null,
  mode: { name: "plain" },
  aside: [],
  notice: null,
  panel: "log",
  window: "hour",
  scroll: 0,
  beforeEscape: null,
});

/** Whether an entry is not on the disk yet. */
export const isUnsaved = (model: Model): boolean => model.saved < model.file.entries.length;

/** The text that is being typed, in a line or in a form's field. */
export function typingIn(mode: Mode): Typing | null {
  if (mode.name === "form") return { text: mode.texts[mode.field] ?? "", cursor: mode.cursor };
  return mode.name === "line" || mode.name === "put-right" || mode.name === "find" ? mode : null;
}

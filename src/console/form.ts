/** Forms: several values typed in one go, a field at a time. A form is data; keys, reading and drawing are shared. */
import type { Outcome } from "../format/outcome.ts";
import type { Draft } from "../record/entry.ts";
import type { Context } from "./stroke.ts";

export type Field = {
  /** What the value is called in the text that is kept as typed: `MAP=62`. */
  readonly id: string;
  readonly label: string;
  /** The unit as it is shown; empty for words. */
  readonly unit: string;
  /** What is in force while the field stays empty: the value last recorded, or the protocol's default. */
  readonly standing: string;
  /** The canonical value, or one sentence that says why the text gives none. */
  readonly read: (text: string) => Outcome<Value>;
  /** A value that can hardly be meant beside what else is typed, in one sentence; it is taken all the same. */
  readonly warn?: (value: Value, soFar: Values) => string | null;
};

export type Value = string | number;

/** Canonical values by the fields' ids; a field left empty has none. */
export type Values = { readonly [id: string]: Value };

export type Form = {
  readonly id: string;
  readonly title: string;
  readonly fields: (context: Context) => readonly Field[];
  /** The entries the values mean, or one sentence that says why they mean none. */
  readonly drafts: (values: Values, context: Context) => Outcome<readonly Draft[]>;
  /** What follows from the values, shown beside the fields as they fill. */
  readonly beside?: (values: Values, context: Context) => readonly Beside[];
};

/** A figure beside a form: its name, its value with the unit, and the working. */
export type Beside = { readonly name: string; readonly value: string; readonly working: string };

/** The last field of every form: another time, and a note. */
export const TIME_AND_NOTE = "when";

/** Text as it was typed in each field, by the field's id. */
export type Texts = { readonly [id: string]: string };

/** Field by field as one text, so that it can be kept as typed and be typed again: `MAP=62 allergies="latex, iodine"`. */
export const typedTexts = (fields: readonly Field[], texts: Texts): string =>
  fields
    .flatMap(({ id }) => (texts[id]?.trim() ? [`${id}=${quoted(texts[id].trim())}`] : []))
    .concat(texts[TIME_AND_NOTE]?.trim() ? [texts[TIME_AND_NOTE].trim()] : [])
    .join(" ");

const quoted = (text: string): string => (/[\s"@;]/.test(text) ? JSON.stringify(text) : text);

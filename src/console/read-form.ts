/** A form's texts read against the record: the entries that would be written. */

import { readRun } from "../figures/run.ts";
import type { Instant } from "../format/instant.ts";
import { andThen, type Outcome, refused, taken } from "../format/outcome.ts";
import type { CaseFile } from "../record/case.ts";
import { draftFault } from "../record/draft-fault.ts";
import type { Draft } from "../record/entry.ts";
import { closedFault } from "./closed.ts";
import { type Field, type Form, type Texts, TIME_AND_NOTE, type Value, type Values } from "./form.ts";
import { readLine } from "./line.ts";
import type { Context } from "./stroke.ts";

type FormMeant = {
  readonly drafts: readonly Draft[];
  readonly at: Instant;
  readonly note: string | null;
};

/** The context a form is read in. */
export const formContext = (file: CaseFile, started: Instant): Context => ({
  run: readRun(file, started.ms),
  at: started,
});

/** A draft that can be kept, or one sentence that says why it cannot. */
export function writable(draft: Draft): Outcome<Draft> {
  const fault = draftFault(draft);
  return fault === null
    ? taken(draft)
    : refused(`This cannot be kept (${fault}): type it as it can be meant.`);
}

/** What a field's text means; `null` for one that is empty. */
function readField({ id, read }: Field, texts: Texts): Outcome<Value> | null {
  const text = texts[id]?.trim();
  return text ? read(text) : null;
}

/** The values of the fields that hold a valid text, for what is shown while the form fills. */
export function valuesSoFar(fields: readonly Field[], texts: Texts): Values {
  const values: { [id: string]: Value } = {};
  for (const field of fields) {
    const value = readField(field, texts);
    if (value?.ok) values[field.id] = value.value;
  }
  return values;
}

/** The first field whose text is not valid, with the reason. */
export function fieldFault(fields: readonly Field[], texts: Texts): { id: string; fault: string } | null {
  for (const field of fields) {
    const value = readField(field, texts);
    if (value?.ok === false) return { id: field.id, fault: value.fault };
  }
  return null;
}

/** What is wrong with a field's text, or hard to believe of it beside the other texts; `null` where nothing is. */
export function fieldDoubt(field: Field, texts: Texts, soFar: Values): string | null {
  const value = readField(field, texts);
  if (value === null) return null;
  return value.ok ? (field.warn?.(value.value, soFar) ?? null) : value.fault;
}

/** What the whole form means. A note may be typed with or without `;`, a time with `@`. */
export function formMeans(form: Form, texts: Texts, file: CaseFile, started: Instant): Outcome<FormMeant> {
  const closed = closedFault(file);
  if (closed) return refused(closed);
  const context = formContext(file, started);
  const fields = form.fields(context);
  const wrong = fieldFault(fields, texts);
  if (wrong) return refused(wrong.fault);
  return andThen(readLine(texts[TIME_AND_NOTE] ?? "", started), ({ at, text, note }) => {
    const when = at ?? started;
    const drafts = form.drafts(valuesSoFar(fields, texts), { ...context, at: when });
    const unfit = drafts.ok ? drafts.value.map(writable).find(({ ok }) => !ok) : undefined;
    if (unfit && !unfit.ok) return unfit;
    return andThen(drafts, (list) =>
      taken({ drafts: list, at: when, note: [text, note].filter(Boolean).join(" ") || null }),
    );
  });
}

const PAIR = /([A-Za-z][\w-]*)=("(?:[^"\\]|\\.)*"|\S+)/g;

/** The texts of a form typed as one line: `MAP=62 flow=4.5 @10:42 ; note`. A name that is no field is refused. */
export function textsOf(form: Form, line: string, context: Context): Outcome<Texts> {
  const fields = form.fields(context);
  const texts: { [id: string]: string } = {};
  for (const [, name = "", value = ""] of line.matchAll(PAIR)) {
    const field = fields.find(({ id }) => id.toLowerCase() === name.toLowerCase());
    if (!field)
      return refused(
        `"${name}" is no field of ${form.title}: its fields are ${fields.map(({ id }) => id).join(", ")}.`,
      );
    texts[field.id] = value.startsWith('"') ? unquoted(value) : value;
  }
  const rest = line.replace(PAIR, "").trim();
  const loose = rest
    .split(";")[0]
    ?.trim()
    .split(/\s+/)
    .find((word) => word !== "" && !word.startsWith("@"));
  if (loose) return refused(`"${loose}" is not a field and its value: type such as ${fields[0]?.id}=4.5.`);
  return taken(rest === "" ? texts : { ...texts, [TIME_AND_NOTE]: rest });
}

function unquoted(text: string): string {
  try {
    return String(JSON.parse(text));
  } catch {
    return text.slice(1, -1);
  }
}

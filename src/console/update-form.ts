/** Keys in a form: type, go on, go back, write. */
import type { Instant } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { TIME_AND_NOTE, typedTexts } from "./form.ts";
import type { Key } from "./key.ts";
import { type FormMode, type Model, type Step, still } from "./model.ts";
import { fieldFault, formContext, formMeans } from "./read-form.ts";
import type { FormStroke } from "./stroke.ts";
import { strokeFor } from "./strokes/table.ts";
import { edited, inserted, typing } from "./typing.ts";
import { withEntries } from "./write.ts";

/** The form that is open, and the ids of its fields with the one for time and note at the end. */
export function openForm({ file }: Model, mode: FormMode) {
  const stroke = strokeFor(mode.stroke, file.protocol) as FormStroke;
  const fields = stroke.form.fields(formContext(file, mode.started));
  return { form: stroke.form, fields, ids: [...fields.map(({ id }) => id), TIME_AND_NOTE] };
}

/** The text of the field that is being typed. */
const textIn = ({ texts, field }: FormMode): string => texts[field] ?? "";

/** A key in an open form: Enter on its last field writes it, everything else only edits. */
export function inForm(model: Model, mode: FormMode, key: Key, now: Instant): Step {
  const { ids } = openForm(model, mode);
  const place = Math.max(0, ids.indexOf(mode.field));
  switch (key.name) {
    case "enter":
      return place === ids.length - 1
        ? written(model, mode, now)
        : still(onward(model, mode, ids[place + 1]));
    case "tab":
    case "down":
      return still(onward(model, mode, ids[(place + 1) % ids.length]));
    case "backtab":
    case "up":
      return still(moved(model, mode, ids[(place - 1 + ids.length) % ids.length]));
    case "pagedown":
      return still({ ...model, mode: { ...mode, page: Math.min(20, mode.page + 1) } });
    case "pageup":
      return still({ ...model, mode: { ...mode, page: Math.max(0, mode.page - 1) } });
    case "paste":
      return still(
        typedInto(model, mode, inserted({ text: textIn(mode), cursor: mode.cursor }, harmless(key.text))),
      );
    case "char":
      if (key.char === ";" && mode.field !== TIME_AND_NOTE) return still(onward(model, mode, TIME_AND_NOTE));
      break;
    default:
  }
  const after = edited({ text: textIn(mode), cursor: mode.cursor }, key);
  return still(after ? typedInto(model, mode, after) : model);
}

const typedInto = (
  model: Model,
  mode: FormMode,
  { text, cursor }: { text: string; cursor: number },
): Model => ({
  ...model,
  mode: { ...mode, texts: { ...mode.texts, [mode.field]: text }, cursor, fault: null },
});

const moved = (model: Model, mode: FormMode, field: string | undefined): Model => {
  const next = field ?? mode.field;
  return { ...model, mode: { ...mode, field: next, cursor: typing(mode.texts[next]).cursor, fault: null } };
};

/** Goes on to another field once this one holds nothing or something valid. */
function onward(model: Model, mode: FormMode, field: string | undefined): Model {
  const { fields } = openForm(model, mode);
  const wrong = fieldFault(
    fields.filter(({ id }) => id === mode.field),
    mode.texts,
  );
  return wrong ? { ...model, mode: { ...mode, fault: wrong.fault } } : moved(model, mode, field);
}

/** Enter on the last field writes the form; a field that is not valid is gone to and says why. */
function written(model: Model, mode: FormMode, now: Instant): Step {
  const { form, fields } = openForm(model, mode);
  const wrong = fieldFault(fields, mode.texts);
  if (wrong) {
    const there = moved(model, mode, wrong.id);
    return still({ ...there, mode: { ...(there.mode as FormMode), fault: wrong.fault } });
  }
  const means = formMeans(form, mode.texts, model.file, mode.started);
  if (!means.ok) return still({ ...model, mode: { ...mode, fault: means.fault } });
  const { drafts, at, note } = means.value;
  const typed = `${mode.stroke} ${typedTexts(fields, mode.texts)}`.trim();
  const file = withEntries(model.file, drafts, { at, now, typed, note });
  return {
    model: { ...model, file, mode: { name: "plain" }, notice: null, scroll: 0 },
    effects: [{ do: "save", file }],
  };
}

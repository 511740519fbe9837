/** What an open line says back: its name, what it asks, and what Enter would write. */
import { entryWords } from "../figures/entry-words.ts";
import { courseOf, readRun } from "../figures/run.ts";
import { stopwatch } from "../format/duration.ts";
import { clockTimeOf, dayOf, toIso } from "../format/instant.ts";
import { plain } from "../format/number.ts";
import type { Draft } from "../record/entry.ts";
import { standing } from "../record/standing.ts";
import type { Field } from "./form.ts";
import { type FormMode, isUnsaved, type LineMode, type Model, type PutRightMode } from "./model.ts";
import { fieldDoubt, valuesSoFar } from "./read-form.ts";
import type { EntryStroke } from "./stroke.ts";
import { findStrokes, strokeFor } from "./strokes/table.ts";
import { openForm } from "./update-form.ts";
import { lineMeans, putRightMeans } from "./update-lines.ts";

type Prompt = { readonly label: string; readonly asks: string };

/** The line's label and what it asks just now. */
export function asked(model: Model): Prompt {
  const { mode, file } = model;
  switch (mode.name) {
    case "line": {
      const stroke = strokeFor(mode.stroke, file.protocol) as EntryStroke;
      return { label: `${stroke.key} ${stroke.name}`, asks: stroke.asks(contextOf(model, mode)) };
    }
    case "form": {
      const { form, fields } = openForm(model, mode);
      const field = fields.find(({ id }) => id === mode.field);
      return {
        label: `${mode.stroke} ${form.title} · ${field?.label ?? "time or note"}`,
        asks: fieldAsks(field),
      };
    }
    case "put-right":
      return {
        label: `z put right #${mode.target.slice(1)}`,
        asks: "new amount · @10:42 new time · ! reason strikes out · arrows pick another",
      };
    case "find":
      return { label: "/ find", asks: "part of a name; arrows choose, Enter opens" };
    case "leave":
      return { label: "q leave", asks: leaveAsks(model) };
    case "clock-early":
      return {
        label: "clock",
        asks: `The clock reads ${stopwatch(mode.byMs)} earlier than the last entry. Enter goes on from that entry's time; Esc leaves to set the clock.`,
      };
    case "plain":
    case "checklist":
    case "help":
      return { label: "", asks: "" };
    default:
      return mode satisfies never;
  }
}

export type Meaning = { readonly kind: "writes" | "hint" | "fault"; readonly text: string };

/** What Enter would write, or why it would not. While nothing is typed yet a refusal is only a hint. */
export function meaning(model: Model): Meaning {
  const { mode, file } = model;
  if (mode.name === "find") return found(model, mode.text, mode.chosen);
  if (mode.name === "form") return formMeaning(model, mode);
  if (mode.name !== "line" && mode.name !== "put-right") return { kind: "hint", text: "" };
  if (mode.fault !== null) return { kind: "fault", text: mode.fault };
  const means = mode.name === "line" ? lineMeans(model, mode) : putRightMeans(model, mode);
  if (!means.ok) return { kind: "hint", text: mode.text === "" ? askedAgain(model) : means.fault };
  const { draft, at, note } = means.value;
  const { subject, says } = entryWords(draft, file.protocol);
  const time = mode.name === "line" ? ` at ${momentText(toIso(at), toIso(mode.started))}` : "";
  const reminded = reminderFor(model, draft);
  return {
    kind: "writes",
    text: `Enter writes: ${subject} ${says}${time}${note ? ` ; ${note}` : ""}${reminded}`,
  };
}

/** What the stroke has to say of the entry before it is written. */
function reminderFor({ mode, file }: Model, draft: Draft): string {
  const stroke = mode.name === "line" ? strokeFor(mode.stroke, file.protocol) : undefined;
  const said = stroke?.opens === "line" ? stroke.reminds?.(draft, courseOf(file)) : null;
  return said ? ` · ${said}` : "";
}

function fieldAsks(field: Field | undefined): string {
  if (!field) return "@10:42 another time, or a note; Enter writes the form";
  const standing = field.standing === "" ? "" : ` (${field.standing})`;
  return `${field.unit}${standing}`.trim();
}

/** A form says what is odd about the field being typed, else how to go on. */
function formMeaning(model: Model, mode: FormMode): Meaning {
  if (mode.fault !== null) return { kind: "fault", text: mode.fault };
  const { fields } = openForm(model, mode);
  const field = fields.find(({ id }) => id === mode.field);
  const soFar = valuesSoFar(fields, mode.texts);
  const doubt = (of: Field) => fieldDoubt(of, mode.texts, soFar);
  if (field) {
    const here = doubt(field);
    // A text that is no value is most often one that is still being typed.
    if (here !== null) return { kind: soFar[field.id] === undefined ? "hint" : "fault", text: here };
    return {
      kind: "hint",
      text: "Enter goes on · ↑ back · = as shown · ; last field, Enter writes · Esc aside",
    };
  }
  // Before Enter writes it all, what is hard to believe is said once more.
  const doubted = fields.flatMap((one) => doubt(one) ?? []);
  return doubted.length > 0
    ? { kind: "fault", text: `${doubted.join(" ")} Enter writes it all the same.` }
    : { kind: "hint", text: "Enter writes · ↑ back · @10:42 another time · ; a note · Esc aside" };
}

const momentText = (at: string, started: string) =>
  dayOf(at) === dayOf(started) ? clockTimeOf(at) : `${clockTimeOf(at)} on ${dayOf(at)}`;

const askedAgain = (model: Model) =>
  model.mode.name === "put-right"
    ? pickedText(model, model.mode)
    : "@10:42 another time · ; note · Esc sets aside";

function found(model: Model, query: string, chosen: number): Meaning {
  const strokes = findStrokes(query, model.file.protocol);
  if (strokes.length === 0) return { kind: "hint", text: "No stroke has that in its name." };
  const from = Math.max(0, Math.min(chosen, strokes.length - 1) - 1);
  const list = strokes
    .slice(from, from + 6)
    .map(({ key, name }, i) => `${from + i === chosen ? "▸" : " "}${key} ${name}`);
  return { kind: "writes", text: list.join("  ") };
}

const contextOf = ({ file }: Model, { started }: LineMode | PutRightMode) => ({
  run: readRun(file, started.ms),
  at: started,
});

/** The picked entry in words, so that the person sees what is being put right. */
function pickedText({ file }: Model, { target }: PutRightMode): string {
  const fact = standing(file.entries).written.find(({ entry }) => entry.id === target);
  if (!fact) return "";
  const { subject, says } = entryWords(fact.entry, file.protocol);
  return `${clockTimeOf(fact.entry.at)} ${subject} ${says}${fact.struck ? " (struck out: back takes it back)" : ""}`;
}

function leaveAsks(model: Model): string {
  const held = model.file.entries.length - model.saved;
  return isUnsaved(model)
    ? `${plain(held)} ${held === 1 ? "entry is" : "entries are"} not on the disk yet: wait for saved, or ! leaves and keeps the case elsewhere if it can. Esc stays.`
    : "Enter leaves; the case stays open and resumes. Esc stays.";
}

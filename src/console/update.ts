/** The heart of the console: a model, a message and the time give the next model and what the world is asked to do. */
import { clockTime, type Instant } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { standing } from "../record/standing.ts";
import { closedFault } from "./closed.ts";
import { TIME_AND_NOTE } from "./form.ts";
import type { Key } from "./key.ts";
import { isUnsaved, type Message, type Model, PANELS, type Step, still } from "./model.ts";
import { formContext } from "./read-form.ts";
import { logged } from "./read-stroke.ts";
import type { FormStroke, Stroke } from "./stroke.ts";
import { strokeFor } from "./strokes/table.ts";
import { inserted, typing } from "./typing.ts";
import { inChecklist } from "./update-checklist.ts";
import { inForm } from "./update-form.ts";
import { inFind, inLine, inPutRight, openPutRight, setAside } from "./update-lines.ts";
import { withEntry } from "./write.ts";

/** Pure: the same model, message and time always give the same step. Never throws, whatever is typed. */
export function update(model: Model, message: Message, now: Instant): Step {
  switch (message.name) {
    case "saved":
      return still({ ...model, saved: Math.max(model.saved, message.seq), trouble: null });
    case "not-saved":
      return still({ ...model, trouble: message.why });
    case "clock-stepped":
      return clockStepped(model, message.stepMs, now);
    case "copied":
      return still({ ...model, copy: { seq: Math.max(model.copy?.seq ?? 0, message.seq), trouble: null } });
    case "not-copied":
      return still({ ...model, copy: { seq: model.copy?.seq ?? 0, trouble: message.why } });
    case "told":
      return still({ ...model, notice: message.words });
    case "typed":
      return typedLine(model, message.line, now);
    default:
      return keyPressed(model, message, now);
  }
}

function keyPressed(model: Model, key: Key, now: Instant): Step {
  if (key.name === "unescape")
    return still({ ...model, ...model.beforeEscape, beforeEscape: null, notice: null });
  const { mode, aside } = model;
  const step = inMode({ ...model, beforeEscape: null }, key, now);
  if (key.name !== "escape") return step;
  return { ...step, model: { ...step.model, beforeEscape: { mode, aside } } };
}

function inMode(model: Model, key: Key, now: Instant): Step {
  const { mode } = model;
  if (key.name === "paste" && mode.name !== "form") return still(pasted(model, key.text));
  if (key.name === "interrupt" && mode.name !== "clock-early")
    return still({ ...model, mode: { name: "leave" }, aside: kept(model) });
  switch (mode.name) {
    case "plain":
      return inPlain(model, key, now);
    case "line":
      return inLine(model, mode, key, now);
    case "put-right":
      return inPutRight(model, mode, key, now);
    case "form":
      return key.name === "escape" ? still(setAside(model, mode)) : inForm(model, mode, key, now);
    case "checklist":
      return inChecklist(model, mode, key, now);
    case "find":
      return inFind(model, mode, key, openStroke);
    case "help":
      return still(inHelp(model, mode.scroll, key));
    case "leave":
      return inLeave(model, key);
    case "clock-early":
      return inClockEarly(model, mode.byMs, key, now);
    default:
      return mode satisfies never;
  }
}

/** What is half typed goes aside when Ctrl-C asks to leave. */
const kept = ({ mode, aside }: Model): Model["aside"] =>
  mode.name === "line" || mode.name === "put-right" || mode.name === "form" ? [...aside, mode] : aside;

function inPlain(model: Model, key: Key, now: Instant): Step {
  switch (key.name) {
    case "char":
      return strokeOrNotice(model, key.char, now);
    case "tab":
    case "backtab":
      return still(nextPanel(model, key.name === "tab" ? 1 : -1));
    case "up":
    case "down":
    case "pageup":
    case "pagedown":
    case "home":
    case "end":
      return still(scrolled(model, key.name));
    case "left":
    case "right":
      return still(model.panel === "trends" ? otherWindow(model) : model);
    case "escape":
      return still(broughtBack(model));
    default:
      return still(model);
  }
}

function strokeOrNotice(model: Model, char: string, now: Instant): Step {
  const stroke = strokeFor(char, model.file.protocol);
  if (stroke) return still(openStroke({ ...model, notice: null }, stroke, now));
  return char.trim() === ""
    ? still(model)
    : still({ ...model, notice: `"${harmless(char)}" is no stroke: ? shows them all.` });
}

/** Opens what a stroke opens; the time of this key is the time of the entry. */
function openStroke(model: Model, stroke: Stroke, now: Instant): Model {
  switch (stroke.opens) {
    case "line":
      return {
        ...model,
        scroll: 0,
        mode: { name: "line", stroke: stroke.key, started: now, fault: null, ...typing() },
      };
    case "form":
      return openedForm(model, stroke, now);
    case "put-right":
      return openPutRight(model, now);
    case "checklists":
      return { ...model, mode: { name: "checklist", list: null, item: 0 } };
    case "find":
      return { ...model, mode: { name: "find", chosen: 0, started: now, ...typing() } };
    case "help":
      return { ...model, mode: { name: "help", scroll: 0 } };
    case "panel":
      return nextPanel({ ...model, mode: { name: "plain" } }, 1);
    case "leave":
      return { ...model, mode: { name: "leave" } };
    default:
      return stroke satisfies never;
  }
}

/** An empty form, on its first field. */
function openedForm(model: Model, { key, form }: FormStroke, now: Instant): Model {
  const [first] = form.fields(formContext(model.file, now));
  const field = first?.id ?? TIME_AND_NOTE;
  return {
    ...model,
    mode: { name: "form", stroke: key, field, cursor: 0, texts: {}, page: 0, started: now, fault: null },
  };
}

function nextPanel(model: Model, step: 1 | -1): Model {
  const place = (PANELS.indexOf(model.panel) + step + PANELS.length) % PANELS.length;
  return { ...model, panel: PANELS[place] ?? "log", scroll: 0 };
}

const otherWindow = (model: Model): Model => ({
  ...model,
  window: model.window === "hour" ? "run" : "hour",
});

const SCROLL_STEPS = {
  up: 1,
  down: -1,
  pageup: 10,
  pagedown: -10,
  home: Number.MAX_SAFE_INTEGER,
  end: -Number.MAX_SAFE_INTEGER,
};

function scrolled(model: Model, key: keyof typeof SCROLL_STEPS): Model {
  const most = Math.max(0, standing(model.file.entries).written.length - 1);
  return { ...model, scroll: Math.min(most, Math.max(0, model.scroll + SCROLL_STEPS[key])) };
}

/** Esc again brings back the line that was last set aside. */
function broughtBack(model: Model): Model {
  const last = model.aside.at(-1);
  return last
    ? { ...model, mode: last, aside: model.aside.slice(0, -1), notice: null }
    : { ...model, notice: null };
}

function inHelp(model: Model, scroll: number, key: Key): Model {
  const steps: Partial<Record<Key["name"], number>> = { up: -1, down: 1, pageup: -10, pagedown: 10 };
  const step = steps[key.name];
  if (step !== undefined)
    return { ...model, mode: { name: "help", scroll: Math.min(200, Math.max(0, scroll + step)) } };
  const closes =
    key.name === "escape" || key.name === "enter" || (key.name === "char" && "?q".includes(key.char));
  return closes ? { ...model, mode: { name: "plain" } } : model;
}

/** Enter leaves; while something is unsaved it takes a deliberate `!`. */
function inLeave(model: Model, key: Key): Step {
  const leaves =
    key.name === "enter" ? !isUnsaved(model) : key.name === "char" && key.char === "!" && isUnsaved(model);
  if (leaves) return { model, effects: [{ do: "leave" }] };
  return key.name === "escape" || key.name === "char"
    ? still({ ...model, mode: { name: "plain" } })
    : still(model);
}

/** Enter goes on from the last entry's time, and the record says so; Esc leaves without having written anything. */
function inClockEarly(model: Model, byMs: number, key: Key, now: Instant): Step {
  if (key.name === "enter") return clockStepped({ ...model, mode: { name: "plain" } }, -byMs, now);
  return key.name === "escape" ? { model, effects: [{ do: "leave" }] } : still(model);
}

/** Pasted text joins an open line as one piece of text; a line break in it is a space and writes nothing. */
function pasted(model: Model, text: string): Model {
  const { mode } = model;
  const piece = harmless(text);
  if (piece === "") return model;
  if (mode.name !== "line" && mode.name !== "put-right" && mode.name !== "find") {
    return { ...model, notice: "Pasted text is only taken on an open line: press a stroke first." };
  }
  const after = inserted(mode, piece);
  return {
    ...model,
    mode: mode.name === "find" ? { ...mode, ...after, chosen: 0 } : { ...mode, ...after, fault: null },
  };
}

/** The answer to a line is in the notice: nothing where it was written, else why it was not. */
function typedLine(model: Model, line: string, now: Instant): Step {
  const written = logged(model.file, line, now);
  if (!written.ok) return still({ ...model, notice: written.fault });
  return {
    model: { ...model, file: written.value, notice: null },
    effects: [{ do: "save", file: written.value }],
  };
}

/** The clock's step becomes an entry; the record's own time goes on as if nothing had happened. */
function clockStepped(model: Model, stepMs: number, now: Instant): Step {
  if (closedFault(model.file)) return still(model);
  const file = withEntry(model.file, { kind: "clock", stepMs }, { at: now, now, typed: "" });
  const notice = `The system clock stepped by ${Math.round(stepMs / 1000)} s; the record keeps its own time (now ${clockTime(now)}).`;
  return { model: { ...model, file, notice }, effects: [{ do: "save", file }] };
}

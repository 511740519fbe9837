/** Keys on an open line: an entry, a putting right, a search for a stroke. */
import type { Instant } from "../format/instant.ts";
import { lookUp } from "../format/look-up.ts";
import type { Outcome } from "../format/outcome.ts";
import { standing } from "../record/standing.ts";
import { holdsText } from "./half-typed.ts";
import type { Key } from "./key.ts";
import {
  type FindMode,
  type HalfTyped,
  type LineMode,
  type Model,
  type PutRightMode,
  type Step,
  still,
} from "./model.ts";
import { canBePutRight } from "./put-right.ts";
import { correctionMeantBy, lastToPutRight, type Meant, meantBy } from "./read-stroke.ts";
import type { EntryStroke, Stroke } from "./stroke.ts";
import { findStrokes, strokeFor, strokesOf } from "./strokes/table.ts";
import { edited } from "./typing.ts";
import { withEntry } from "./write.ts";

const MOST_ASIDE = 9;
/** Rows by which keys turn over what an open line shows. */
const TURNS: Readonly<Record<string, number>> = { up: -1, down: 1, pageup: -8, pagedown: 8 };
const MOST_SHOWN = 200;

const plain = (model: Model): Model => ({ ...model, mode: { name: "plain" } });

/** What Enter would write for an open entry line. */
export function lineMeans(model: Model, mode: LineMode): Outcome<Meant> {
  return meantBy(
    strokeFor(mode.stroke, model.file.protocol) as EntryStroke,
    mode.text,
    model.file,
    mode.started,
  );
}

/** What Enter would write for an open putting right. */
export const putRightMeans = (model: Model, mode: PutRightMode): Outcome<Meant> =>
  correctionMeantBy(mode.target, mode.text, model.file, mode.started);

/** A key on an open entry line: Enter writes it, arrows turn over what it shows, everything else edits. */
export function inLine(model: Model, mode: LineMode, key: Key, now: Instant): Step {
  if (key.name === "enter")
    return enter(model, mode, lineMeans(model, mode), `${mode.stroke}${mode.text}`, now);
  const step = lookUp(TURNS, key.name);
  if (step !== undefined)
    return still({ ...model, scroll: Math.max(0, Math.min(MOST_SHOWN, model.scroll + step)) });
  return still(otherKey(model, mode, key));
}

/** A key on an open putting right: Enter writes it, arrows pick another entry, everything else edits. */
export function inPutRight(model: Model, mode: PutRightMode, key: Key, now: Instant): Step {
  if (key.name === "enter") return enter(model, mode, putRightMeans(model, mode), typedFor(model, mode), now);
  if (key.name === "up" || key.name === "down")
    return still({ ...model, mode: { ...mode, target: neighbour(model, mode, key.name), fault: null } });
  return still(otherKey(model, mode, key));
}

/** As typed, with the entry that was picked by arrow named, so that the line can be read back without the screen. */
const typedFor = (model: Model, { text, target }: PutRightMode): string => {
  const key = strokesOf(model.file.protocol).find(({ opens }) => opens === "put-right")?.key ?? "z";
  return text.trimStart().startsWith("#") ? `${key}${text}` : `${key}#${target.slice(1)} ${text}`;
};

function enter(
  model: Model,
  mode: LineMode | PutRightMode,
  meant: Outcome<Meant>,
  typed: string,
  now: Instant,
): Step {
  if (!meant.ok) return still({ ...model, mode: { ...mode, fault: meant.fault } });
  const { draft, at, note } = meant.value;
  const file = withEntry(model.file, draft, { at, now, typed, note });
  return { model: { ...plain(model), file, notice: null, scroll: 0 }, effects: [{ do: "save", file }] };
}

/** Esc sets the line aside; Backspace on an empty line closes it; the rest edits. */
function otherKey(model: Model, mode: LineMode | PutRightMode, key: Key): Model {
  if (key.name === "escape") return setAside(model, mode);
  if (key.name === "backspace" && mode.text === "") return { ...plain(model), notice: null };
  const after = edited(mode, key);
  return after ? { ...model, mode: { ...mode, ...after, fault: null } } : model;
}

/** What is half typed waits until Esc brings it back; a form with nothing in it would only hide what waits. */
export function setAside(model: Model, mode: HalfTyped): Model {
  if (mode.name === "form" && !holdsText(mode)) return { ...plain(model), notice: null };
  const aside = [...model.aside, mode].slice(-MOST_ASIDE);
  return { ...plain(model), aside, notice: "Set aside: Esc brings it back." };
}

/** Opens the putting right of the last entry that can be. */
export function openPutRight(model: Model, now: Instant): Model {
  const target = lastToPutRight(model.file);
  if (!target) return { ...model, mode: { name: "plain" }, notice: "There is no entry to put right yet." };
  return { ...model, mode: { name: "put-right", target, started: now, fault: null, text: "", cursor: 0 } };
}

function neighbour(model: Model, { target }: PutRightMode, way: "up" | "down"): string {
  const ids = standing(model.file.entries)
    .written.filter(({ entry }) => canBePutRight(entry))
    .map(({ entry }) => entry.id);
  const place = ids.indexOf(target) + (way === "up" ? -1 : 1);
  return ids[Math.min(ids.length - 1, Math.max(0, place))] ?? target;
}

/** A key in the search for a stroke; `open` opens the one that Enter chooses, at the time of the first key. */
export function inFind(
  model: Model,
  mode: FindMode,
  key: Key,
  open: (model: Model, stroke: Stroke, at: Instant) => Model,
): Step {
  const found = findStrokes(mode.text, model.file.protocol);
  const chosen = Math.min(mode.chosen, Math.max(0, found.length - 1));
  if (key.name === "escape" || (key.name === "backspace" && mode.text === "")) return still(plain(model));
  if (key.name === "up" || key.name === "down") {
    const place = Math.min(found.length - 1, Math.max(0, chosen + (key.name === "up" ? -1 : 1)));
    return still({ ...model, mode: { ...mode, chosen: Math.max(0, place) } });
  }
  if (key.name === "enter") {
    const stroke = found[chosen];
    return still(stroke ? open(plain(model), stroke, mode.started) : model);
  }
  const after = edited(mode, key);
  return still(after ? { ...model, mode: { ...mode, ...after, chosen: 0 } } : model);
}

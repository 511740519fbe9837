/** The keys a person presses for a stroke that is written as one line: for the demo, for scripts and for tests. */
import type { Instant } from "../format/instant.ts";
import type { Checklist } from "../protocol/checklists.ts";
import type { CaseFile } from "../record/case.ts";
import { type Texts, TIME_AND_NOTE } from "./form.ts";
import { type Key, keysOf } from "./key.ts";
import { tickedBy } from "./read-check.ts";
import { formContext, textsOf } from "./read-form.ts";
import type { FormStroke } from "./stroke.ts";
import { strokeFor } from "./strokes/table.ts";

/** For a line its text and Enter; for a form (`s flow=4.5 MAP=62 @10:42 ; note`) its fields one after the other. */
export function keysFor(file: CaseFile, typed: string, now: Instant): readonly Key[] {
  const [key = "", ...rest] = typed.trim();
  const stroke = strokeFor(key, file.protocol);
  if (stroke?.opens === "form") return [...keysOf(key), ...formKeys(stroke, rest.join(""), file, now)];
  if (stroke?.opens === "checklists")
    return [...keysOf(key), ...checkKeys(rest.join(""), file.protocol.checklists)];
  return keysOf(`${typed.trim()}\n`);
}

/** Enter from field to field as far as something is typed, then on to the last field, where Enter writes. */
function formKeys({ form }: FormStroke, line: string, file: CaseFile, now: Instant): readonly Key[] {
  const context = formContext(file, now);
  const texts = textsOf(form, line, context);
  const typed: Texts = texts.ok ? texts.value : {};
  const ids = form.fields(context).map(({ id }) => id);
  const last = ids.findLastIndex((id) => typed[id] !== undefined);
  const fields = ids.slice(0, last + 1).map((id) => typed[id] ?? "");
  return keysOf(`${fields.join("\n")};${(typed[TIME_AND_NOTE] ?? "").trim()}\n`);
}

const DOWN: Key = { name: "down" };
const ESCAPE: Key = { name: "escape" };

/** Opens the list, goes down to the item, ticks it, and goes back to the console. */
function checkKeys(line: string, lists: readonly Checklist[]): readonly Key[] {
  const ticked = tickedBy(line, lists);
  if (!ticked.ok) return [ESCAPE];
  const { list, item, tick } = ticked.value;
  const down = list.items.slice(0, list.items.indexOf(item)).map(() => DOWN);
  return [...keysOf(list.letter), ...down, ...keysOf(tick), ESCAPE, ESCAPE];
}

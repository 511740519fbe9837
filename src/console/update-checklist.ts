/** Keys in the checklists: choose a list by its letter, tick its items one by one. Every tick is an entry. */
import { checkStates, type ItemState, stateOf } from "../figures/checks.ts";
import type { Instant } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { standing } from "../record/standing.ts";
import { closedFault } from "./closed.ts";
import type { Key } from "./key.ts";
import { type ChecklistMode, type Model, type Step, still } from "./model.ts";
import { withEntry } from "./write.ts";

/** What a key does to the item that is chosen. */
export const TICKS: Readonly<Record<string, ItemState>> = { " ": "done", n: "not-applicable", u: "open" };

/** A key in the checklists; each tick is written and saved at once. */
export function inChecklist(model: Model, mode: ChecklistMode, key: Key, now: Instant): Step {
  const lists = model.file.protocol.checklists;
  if (mode.list === null) return still(choosing(model, mode, key));
  const list = lists.find(({ id }) => id === mode.list);
  if (key.name === "escape" || !list) return still({ ...model, mode: { ...mode, list: null, item: 0 } });
  if (key.name === "up" || key.name === "down") {
    const item = Math.max(0, Math.min(list.items.length - 1, mode.item + (key.name === "up" ? -1 : 1)));
    return still({ ...model, mode: { ...mode, item } });
  }
  const state = key.name === "enter" ? "done" : key.name === "char" ? TICKS[key.char] : undefined;
  const item = list.items[mode.item];
  if (!state || !item) return still(model);
  const closed = closedFault(model.file);
  if (closed) return still({ ...model, notice: closed });
  const next = { ...mode, item: Math.min(list.items.length - 1, mode.item + 1) };
  if (stateOf(checkStates(standing(model.file.entries).facts), list.id, item.id) === state)
    return still({ ...model, mode: next });
  const typed = `c${list.letter}${key.name === "char" ? key.char : ""}`;
  const file = withEntry(
    model.file,
    { kind: "check", checklist: list.id, item: item.id, state },
    { at: now, now, typed },
  );
  return { model: { ...model, file, mode: next }, effects: [{ do: "save", file }] };
}

/** Esc goes back to the console; a list's letter, or Enter on the chosen one, opens it. */
function choosing(model: Model, mode: ChecklistMode, key: Key): Model {
  const lists = model.file.protocol.checklists;
  const opened =
    key.name === "enter"
      ? lists[mode.item]
      : key.name === "char"
        ? lists.find(({ letter }) => letter === key.char)
        : undefined;
  if (opened) return { ...model, mode: { ...mode, list: opened.id, item: 0 }, notice: null };
  if (key.name === "escape") return { ...model, mode: { name: "plain" } };
  if (key.name === "up" || key.name === "down") {
    return {
      ...model,
      mode: {
        ...mode,
        item: Math.max(0, Math.min(lists.length - 1, mode.item + (key.name === "up" ? -1 : 1))),
      },
    };
  }
  return key.name === "char"
    ? { ...model, notice: `"${harmless(key.char)}" is no checklist here: type a letter of the list.` }
    : model;
}

/** Keys pressed on the console's model, without a terminal. */
import { type Key, keysOf } from "../../src/console/key.ts";
import type { LineMode, Model } from "../../src/console/model.ts";
import { update } from "../../src/console/update.ts";
import type { Instant } from "../../src/format/instant.ts";
import type { Entry } from "../../src/record/entry.ts";

/** The model after keys: a text, of which each character is a key and a line break is Enter, or named keys. */
export const press = (model: Model, keys: string | readonly Key[], now: Instant): Model =>
  (typeof keys === "string" ? keysOf(keys) : keys).reduce(
    (before, key) => update(before, key, now).model,
    model,
  );

export const ESCAPE: Key = { name: "escape" };
export const UP: Key = { name: "up" };
export const DOWN: Key = { name: "down" };
export const paste = (text: string): Key => ({ name: "paste", text });

export const entriesOf = (model: Model): readonly Entry[] => model.file.entries;

/** What is written on the open entry line. */
export function openLine({ mode }: Model): LineMode {
  if (mode.name !== "line") throw new Error(`no line is open: the console is in ${mode.name}`);
  return mode;
}

/** Editing a line of text by keys, by code points. */
import type { Key } from "./key.ts";
import type { Typing } from "./model.ts";

export const MOST_TYPED = 500;

/** A text with the cursor behind it. */
export const typing = (text = ""): Typing => ({ text, cursor: [...text].length });

/** The text after a key, or `null` when the key edits nothing. */
export function edited({ text, cursor }: Typing, key: Key): Typing | null {
  const points = [...text];
  switch (key.name) {
    case "char":
      return inserted({ text, cursor }, key.char);
    case "backspace":
      return cursor === 0 ? null : { text: without(points, cursor - 1), cursor: cursor - 1 };
    case "delete":
      return cursor >= points.length ? null : { text: without(points, cursor), cursor };
    case "left":
      return { text, cursor: Math.max(0, cursor - 1) };
    case "right":
      return { text, cursor: Math.min(points.length, cursor + 1) };
    case "home":
      return { text, cursor: 0 };
    case "end":
      return { text, cursor: points.length };
    default:
      return null;
  }
}

/** The text with a piece put in at the cursor; a line holds so much and no more. */
export function inserted({ text, cursor }: Typing, piece: string): Typing {
  const points = [...text];
  const added = [...piece].slice(0, MOST_TYPED - points.length);
  return {
    text: [...points.slice(0, cursor), ...added, ...points.slice(cursor)].join(""),
    cursor: cursor + added.length,
  };
}

const without = (points: readonly string[], place: number) => points.filter((_, i) => i !== place).join("");

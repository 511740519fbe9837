/**
 * From what a terminal sends to keys. The same bytes give the same keys however they are cut into reads: what may be
 * the head of a sequence is held until it is whole, or until the host says that its time is up.
 */
import { type Key, type KeyName, keyOf } from "./key.ts";

/** What has been read and is not a key yet. */
export type Held = {
  /** Empty, or a text that begins with Esc. */
  readonly text: string;
  /** Whether the last key was a carriage return, so that the line feed after it is no second Enter. */
  readonly afterReturn: boolean;
  /** Whether the Esc that is held has been told as a key already. */
  readonly told: boolean;
};

export const NOTHING_HELD: Held = { text: "", afterReturn: false, told: false };

type Read = { readonly held: Held; readonly keys: readonly Key[] };

const PASTE_START = "\x1b[200~";
const PASTE_END = "\x1b[201~";

/** The final letters and numbers of sequences, by the key they mean; modifiers are not looked at. */
const SEQUENCES: Readonly<Record<string, KeyName>> = {
  A: "up",
  B: "down",
  C: "right",
  D: "left",
  H: "home",
  F: "end",
  Z: "backtab",
  "1~": "home",
  "7~": "home",
  "4~": "end",
  "8~": "end",
  "3~": "delete",
  "5~": "pageup",
  "6~": "pagedown",
};

// biome-ignore-start lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const WHOLE = /^\x1b(?:\[\[?([0-?]*)[ -/]*([@-~])|O([0-9;]*)([@-~]))/;
const HEAD = /^\x1b(?:\[\[?[0-?]*[ -/]*|O[0-9;]*)?$/;
const BROKEN = /^\x1b\[\[?[0-?]*[ -/]*/;
// biome-ignore-end lint/suspicious/noControlCharactersInRegex: the same.

/** Reads one piece of what the terminal sent. */
export function readKeys(before: Held, piece: string): Read {
  const keys: Key[] = [];
  let rest = before.text + piece;
  let { afterReturn, told } = before;
  while (rest !== "") {
    if (!rest.startsWith("\x1b")) {
      const point = String.fromCodePoint(rest.codePointAt(0) as number);
      const key = afterReturn && point === "\n" ? null : keyOf(point);
      if (key) keys.push(key);
      afterReturn = point === "\r";
      told = false;
      rest = rest.slice(point.length);
      continue;
    }
    afterReturn = false;
    const next = readSequence(rest, told);
    if (next === "unfinished") return { held: { text: rest, afterReturn, told }, keys };
    keys.push(...next.keys);
    told = false;
    rest = rest.slice(next.length);
  }
  return { held: { text: "", afterReturn, told: false }, keys };
}

type Sequence = { readonly keys: readonly Key[]; readonly length: number };

/** What begins with Esc: a paste, a key's sequence, the head of one, or an Esc typed by a person. */
function readSequence(text: string, told: boolean): Sequence | "unfinished" {
  const torn = tornBy(told);
  if (text.startsWith(PASTE_START)) {
    const end = text.indexOf(PASTE_END);
    if (end < 0) return "unfinished";
    return { keys: [...torn, pasteOf(text.slice(PASTE_START.length, end))], length: end + PASTE_END.length };
  }
  const typedEscape: Key[] = told ? [] : [{ name: "escape" }];
  if (told && text[1] === "O") return { keys: [], length: 1 };
  const whole = WHOLE.exec(text);
  if (whole) return { keys: [...torn, ...keyMeant(whole)], length: whole[0].length };
  if (HEAD.test(text)) return "unfinished";
  return { keys: typedEscape, length: BROKEN.exec(text)?.[0].length ?? 1 };
}

const pasteOf = (text: string): Key => ({ name: "paste", text });

/** Where the Esc was told as a key, that it was none. */
const tornBy = (told: boolean): Key[] => (told ? [{ name: "unescape" }] : []);

function keyMeant([whole, parameters = "", final = "", , shifted]: RegExpExecArray): Key[] {
  if (shifted === "M") return [{ name: "enter" }];
  // A function key of the system's own console, and no arrow: \x1b[[A is F1.
  if (whole.startsWith("\x1b[[")) return [];
  const code = shifted ?? (final === "~" ? `${parameters.split(";")[0]}~` : final);
  const name = SEQUENCES[code];
  return name ? [{ name }] : [];
}

/**
 * Time is up: what is held will hardly be completed. A lone Esc is told and stays held, so that an arrow key torn for
 * longer still finds its head; half a sequence is dropped; an unfinished paste gives what came of it.
 */
export function settleKeys(held: Held): Read {
  const { text } = held;
  if (text === "") return { held, keys: [] };
  if (text === "\x1b") return { held: { ...held, told: true }, keys: held.told ? [] : [{ name: "escape" }] };
  if (text.startsWith(PASTE_START))
    return { held: NOTHING_HELD, keys: [...tornBy(held.told), pasteOf(text.slice(PASTE_START.length))] };
  const typed: Key[] = text.startsWith("\x1bO") ? [{ name: "escape" }, { name: "char", char: "O" }] : [];
  return { held: NOTHING_HELD, keys: typed };
}

/** How long the host waits, in milliseconds, before it settles what is held; `null` when there is nothing to settle. */
export function patienceFor({ text, told }: Held): number | null {
  if (text === "" || (told && text === "\x1b")) return null;
  if (text.startsWith(PASTE_START)) return 2000;
  return text === "\x1b" ? 150 : 1000;
}

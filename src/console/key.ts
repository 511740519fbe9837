/** The keys of the console, as the program knows them whatever the terminal sends. */

type NamedKey =
  | "enter"
  | "tab"
  | "backtab"
  | "backspace"
  | "delete"
  | "escape"
  | "up"
  | "down"
  | "left"
  | "right"
  | "pageup"
  | "pagedown"
  | "home"
  | "end"
  | "interrupt"
  /** The Esc told before was none: it was the head of a key torn in transit, which follows. */
  | "unescape";

export type KeyName = NamedKey;

export type Key =
  | { readonly name: NamedKey }
  | { readonly name: "char"; readonly char: string }
  /** Text pasted in one piece, line breaks and all. */
  | { readonly name: "paste"; readonly text: string };

const CONTROL = /\p{Cc}/u;

/** The key for one code point that is not part of a sequence; `null` for controls that mean nothing here. */
export function keyOf(point: string): Key | null {
  switch (point) {
    case "\r":
    case "\n":
      return { name: "enter" };
    case "\t":
      return { name: "tab" };
    case "\x7f":
    case "\b":
      return { name: "backspace" };
    case "\x03":
      return { name: "interrupt" };
    default:
      return CONTROL.test(point) ? null : { name: "char", char: point };
  }
}

/** Keys of a plain text, for scripts and tests: a line break is Enter, a tab is Tab. */
export const keysOf = (text: string): Key[] => [...text].flatMap((point) => keyOf(point) ?? []);

/** A fault of a protocol file: where it is, what it is, and what to do about it. */
import { harmless } from "../format/text.ts";

export type Fault = {
  /** `solutions 2 · interval · value`; `line 4, column 7` in text that is not JSON; empty for the whole file. */
  readonly place: string;
  /** A clause without a full stop: what is wrong there. */
  readonly says: string;
  /** An instruction without a full stop: what would put it right. */
  readonly suggestion: string;
};

export type Path = readonly PropertyKey[];

/** A path into the file in words, lists counted from one: `solutions 2 · interval · value`. */
export function placeOf(path: Path): string {
  const steps: string[] = [];
  for (const step of path) {
    if (typeof step === "number") steps.push(`${steps.pop() ?? "entry"} ${step + 1}`);
    else steps.push(shortened(String(step)));
  }
  return steps.join(" · ");
}

/** A fault at a path. */
export const faultAt = (path: Path, says: string, suggestion: string): Fault => ({
  place: placeOf(path),
  says,
  suggestion,
});

/** The fault as one sentence: `usualSolution: no solution is called "x"; write one of …`. */
export function faultText({ place, says, suggestion }: Fault): string {
  const what = place === "" ? says : `${place}: ${says}`;
  return `${what}; ${suggestion}.`;
}

/** Something from the file as it may be shown: text between quotation marks, a list or a group only by its kind. */
export function quoted(value: unknown): string {
  if (typeof value === "string") return `"${shortened(value)}"`;
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" && value !== null ? "a group in curly brackets" : String(value);
}

function shortened(text: string): string {
  const line = harmless(text.slice(0, 200));
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
}

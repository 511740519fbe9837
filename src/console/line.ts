/** The entry line taken apart: words, a time given with `@`, a note after `;`. */
import type { Instant } from "../format/instant.ts";
import { type Outcome, taken } from "../format/outcome.ts";
import { looksLikeTime, timeGiven } from "./time-given.ts";

export type Line = {
  /** The words that are left, as typed. */
  readonly words: readonly string[];
  /** The same as one text, for entries that are free text. */
  readonly text: string;
  /** The time the person gave, if any. */
  readonly at: Instant | null;
  readonly note: string | null;
};

/** Takes a line apart at `now`. A time may stand anywhere among the words; the last one counts. */
export function readLine(typed: string, now: Instant): Outcome<Line> {
  const cut = typed.indexOf(";");
  const [body, note] = cut < 0 ? [typed, ""] : [typed.slice(0, cut), typed.slice(cut + 1).trim()];
  const all = body.split(/\s+/).filter((word) => word !== "");
  const words = all.filter((word) => !looksLikeTime(word));
  let at: Instant | null = null;
  for (const word of all.filter(looksLikeTime)) {
    const given = timeGiven(word, now);
    if (!given.ok) return given;
    at = given.value;
  }
  return taken({ words, text: words.join(" "), at, note: note === "" ? null : note });
}

/** y: the pump handed over to a relief, with the summary as it was shown. */
import { handoverSummary } from "../../figures/handover.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import type { EntryStroke } from "../stroke.ts";

/** Initials: up to eight letters, kept in capitals. */
export function readInitials(word: string | undefined, whose: string): Outcome<string> {
  return word !== undefined && /^\p{L}{1,8}$/u.test(word)
    ? taken(word.toUpperCase())
    : refused(
        `${word === undefined ? "Nothing typed" : `"${word}" is not initials`}: type the initials of ${whose}, up to eight letters.`,
      );
}

export const handover: EntryStroke = {
  key: "y",
  id: "handover",
  short: "hand over",
  name: "hand over the pump",
  opens: "line",
  takes: "initials of the relief; shows the handover summary",
  likely: [],
  example: "y TJ",
  asks: () => "relief's initials, once it is read out; arrows scroll",
  shows: ({ run }) => handoverSummary(run),
  read: ({ words }, { run }): Outcome<Draft> => {
    const initials = readInitials(words[0], "the relief");
    if (!initials.ok) return initials;
    if (words.length > 1) return refused("Type the initials alone; a note goes behind a semicolon.");
    return taken({ kind: "operator", operator: initials.value, summary: [...handoverSummary(run)] });
  },
};

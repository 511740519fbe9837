/** e and n: incidents and notes, in the person's own words. */
import { PHASES } from "../../figures/phase.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import type { Line } from "../line.ts";
import type { EntryStroke } from "../stroke.ts";

const readWords =
  (kind: "note" | "incident") =>
  ({ text }: Line): Outcome<Draft> =>
    text === "" ? refused("Nothing typed: write a few words.") : taken({ kind, text });

export const incident: EntryStroke = {
  key: "e",
  id: "incident",
  short: "incident",
  name: "incident",
  opens: "line",
  takes: "text",
  likely: [],
  example: "e chatter in the venous line",
  asks: () => "what happened",
  read: readWords("incident"),
};

export const note: EntryStroke = {
  key: "n",
  id: "note",
  short: "note",
  name: "note",
  opens: "line",
  takes: "text",
  likely: PHASES,
  example: "n surgeon asks for 50 mmHg",
  asks: () => "text",
  read: readWords("note"),
};

/** m: a moment, or a span going on or off, by a letter from the protocol's list. */
import { isOn } from "../../figures/run.ts";
import { intervalAt, intervalsOf } from "../../figures/spans.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import { listed } from "../../format/text.ts";
import type { Mark } from "../../protocol/marks.ts";
import type { Draft } from "../../record/entry.ts";
import type { Line } from "../line.ts";
import type { Context, EntryStroke } from "../stroke.ts";
import { stateAsked } from "./span.ts";

type Said = { mark: Mark; way?: string; rest: readonly string[] };

/** A letter, a second letter for the way where there are ways (`ca` or `c a`), and on or off where it is said. */
export function readMark(words: readonly string[], marks: readonly Mark[]): Outcome<Said> {
  const [first = "", ...others] = words.map((word) => word.toLowerCase());
  const mark = marks.find(({ letter }) => letter === first[0]);
  if (first === "") return refused("Nothing typed: type a letter of the list.");
  if (!mark || first.length > 2) return refused(`"${first}" is not on the list: type one of its letters.`);
  const said = first.length === 2 ? [first[1] as string, ...others] : others;
  const way = mark.ways?.find(({ letter }) => letter === said[0]);
  if (way) return taken({ mark, way: way.id, rest: said.slice(1) });
  const ways = mark.ways
    ? ` ${listed(
        mark.ways.map(({ letter, name }) => `${letter} ${name}`),
        "or",
      )},`
    : "";
  const isState = said.length === 0 || said[0] === "on" || said[0] === "off";
  if (!isState)
    return refused(`"${said[0]}" says nothing after ${mark.name}: type${ways} on or off, or nothing.`);
  return taken({ mark, rest: said });
}

function draftOf({ mark, way, rest }: Said, { run, at }: Context): Outcome<Draft> {
  if (mark.sort === "moment") {
    return rest.length > 0
      ? refused(`${mark.name} is a moment, neither on nor off: type its letter alone.`)
      : taken({ kind: "moment", what: mark.id });
  }
  const then = intervalAt(intervalsOf(run.course.spans, mark.id), at.ms);
  const changesWay = then !== undefined && way !== undefined && way !== then.way;
  return andThen(
    stateAsked(rest, then !== undefined && !changesWay),
    (state): Outcome<Draft> =>
      taken({ kind: "span", what: mark.id, state, ...(way !== undefined && state === "on" ? { way } : {}) }),
  );
}

export const mark: EntryStroke = {
  key: "m",
  id: "moment",
  short: "mark",
  name: "moment or span",
  opens: "line",
  takes: "a letter from the list; a span goes on, or off when it is on",
  likely: ["before", "on bypass", "arrested", "reperfusing", "after"],
  example: "m s",
  asks: () => "a letter from the list",
  choices: ({ run }) =>
    run.course.protocol.marks.map((one) => [
      one.ways ? `${one.letter}${one.ways.map(({ letter }) => letter).join("/")}` : one.letter,
      isOn(run.course, one.id) ? `${one.name} *on` : one.name,
    ]),
  read: (line: Line, context: Context) =>
    andThen(readMark(line.words, context.run.course.protocol.marks), (said) => draftOf(said, context)),
};

/** d: a dose of arrest solution: started, so far, ended, or told as a whole. */
import { ROUTE_NAMES } from "../../figures/entry-words.ts";
import { lookUp } from "../../format/look-up.ts";
import { plain } from "../../format/number.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import { ROUTES, type Route } from "../../record/entries-given.ts";
import type { Draft } from "../../record/entry.ts";
import { volumeOf } from "../amounts.ts";
import type { Line } from "../line.ts";
import type { Context, EntryStroke } from "../stroke.ts";

export const ROUTE_LETTERS: Record<string, Route> = {
  a: "root",
  l: "left-ostium",
  r: "right-ostium",
  s: "coronary-sinus",
  g: "graft",
};

type Said = { ml?: number; soFar?: boolean; route?: Route };

/** Millilitres and a route letter in any order; `300+` is a running total. */
export function readDoseWords(words: readonly string[]): Outcome<Said> {
  const said: Said = {};
  for (const word of words) {
    const route = lookUp(ROUTE_LETTERS, word.toLowerCase());
    if (route) {
      if (said.route)
        return refused(
          "Two routes: type one letter of a l r s g, and log the other route as a dose of its own.",
        );
      said.route = route;
      continue;
    }
    if (said.ml !== undefined)
      return refused(`"${word}" is one too many: type millilitres and one route letter, such as 300 r.`);
    const ml = volumeOf(word.replace(/\+$/, ""));
    if (!ml.ok)
      return refused(`"${word}" is neither millilitres nor a route letter: type such as 300, 300+ or 300 r.`);
    said.ml = ml.value;
    if (word.endsWith("+")) said.soFar = true;
  }
  return taken(said);
}

function readDose(line: Line, { run }: Context): Outcome<Draft> {
  const said = readDoseWords(line.words);
  if (!said.ok) return said;
  const { ml, soFar, route } = said.value;
  const where = route === undefined ? {} : { route };
  const running = run.running !== undefined;
  if (ml === undefined) {
    if (running) return refused("A dose is running: type the millilitres to end it, or 300+ for so far.");
    return taken({ kind: "dose", state: "start", ...where });
  }
  if (soFar && !running)
    return refused("No dose is running: d alone starts one, 300 without + logs a whole dose.");
  return taken({ kind: "dose", state: soFar ? "so-far" : running ? "end" : "whole", ml, ...where });
}

export const dose: EntryStroke = {
  key: "d",
  id: "dose",
  short: "dose",
  name: "arrest dose",
  opens: "line",
  takes:
    "nothing: starts it · mL while one runs: ends it · 300+: so far, still running · mL with none running: a whole dose · route letter a root, l left ostium, r right ostium, s coronary sinus, g graft",
  likely: ["arrested"],
  example: "d 300 r",
  asks: ({ run }) =>
    run.running
      ? `running${run.running.ml === null ? "" : `, ${plain(run.running.ml)} in`}: mL ends it, 300+ so far`
      : "Enter starts it; mL: a whole dose; route a l r s g",
  read: readDose,
  choices: () =>
    ROUTES.map((route) => [
      Object.keys(ROUTE_LETTERS).find((key) => ROUTE_LETTERS[key] === route) as string,
      ROUTE_NAMES[route],
    ]),
};

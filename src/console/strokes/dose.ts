/** d: a dose of arrest solution: started, so far, ended, or told as a whole. */
import { ROUTE_NAMES } from "../../figures/entry-words.ts";
import { lookUp } from "../../format/look-up.ts";
import { plain } from "../../format/number.ts";
import { type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Draft } from "../../record/entry.ts";
import { ROUTES, type Route } from "../../record/routes.ts";
import { volumeOf } from "../amounts.ts";
import type { Line } from "../line.ts";
import type { Context, EntryStroke } from "../stroke.ts";

const ROUTE_LETTERS: Record<string, Route> = {
  a: "root",
  l: "left-ostium",
  r: "right-ostium",
  s: "coronary-sinus",
  g: "graft",
};

type Said = { ml?: number; soFar?: boolean; route?: Route; pressure?: number; temperature?: number };

/** `300`, `300+`, `300r`, `1.2L`: here a small letter behind a number is a route, so litres take a capital L. */
const AMOUNT = /^(\d[\d.,]*(?:ml|mL|ML|L)?)([alrsg])?(\+)?$/;
const MEASURED = /^([pt])(-?\d{1,3}(?:[.,]\d)?)$/i;

/** Millilitres and a route letter in any order; `300+` is a running total, `p80` mmHg and `t8` °C go with a dose. */
export function readDoseWords(words: readonly string[]): Outcome<Said> {
  let said: Said = {};
  for (const word of words) {
    const read = readDoseWord(word);
    if (!read.ok) return read;
    const twice = Object.keys(read.value).find((field) => field in said);
    if (twice === "route") return refused(TWO_ROUTES);
    if (twice)
      return refused(`"${word}" is one too many: type millilitres and one route letter, such as 300 r.`);
    said = { ...said, ...read.value };
  }
  return couldBeLitres(said)
    ? refused(`"${words.join(" ")}" could mean litres or the left ostium: type 1200 l, or 1.2L.`)
    : taken(said);
}

/** Nobody gives fractions of a millilitre, or one or two, by the left ostium. */
const couldBeLitres = ({ ml, route }: Said): boolean =>
  route === "left-ostium" && ml !== undefined && (ml < 5 || !Number.isInteger(ml));

const TWO_ROUTES = "Two routes: type one letter of a l r s g, and log the other route as a dose of its own.";

function readDoseWord(word: string): Outcome<Said> {
  const route = lookUp(ROUTE_LETTERS, word.toLowerCase());
  if (route) return taken({ route });
  const measured = MEASURED.exec(word);
  if (measured) return readMeasured(measured[1] as string, Number((measured[2] as string).replace(",", ".")));
  const [, amount, letter, plus] = AMOUNT.exec(word) ?? [];
  const ml = amount === undefined ? null : volumeOf(amount);
  if (!ml?.ok)
    return refused(`"${word}" is neither millilitres nor a route letter: type such as 300, 300+ or 300 r.`);
  const glued = letter ? lookUp(ROUTE_LETTERS, letter) : undefined;
  return taken({ ml: ml.value, ...(plus ? { soFar: true } : {}), ...(glued ? { route: glued } : {}) });
}

function readMeasured(letter: string, value: number): Outcome<Said> {
  if (letter.toLowerCase() === "p") {
    return value < -50 || value > 600
      ? refused(`p${value} cannot be a pressure in mmHg: type such as p80.`)
      : taken({ pressure: value });
  }
  return value < 0 || value > 42
    ? refused(`t${value} cannot be a temperature in °C: type such as t8.`)
    : taken({ temperature: value });
}

function readDose(line: Line, { run }: Context): Outcome<Draft> {
  const said = readDoseWords(line.words);
  if (!said.ok) return said;
  const { ml, soFar, ...where } = said.value;
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
    "nothing: starts it · mL while one runs: ends it · 300+: so far, still running · mL with none running: a whole dose · route letter a root, l left ostium, r right ostium, s coronary sinus, g graft · p80 mmHg and t8 °C where measured",
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

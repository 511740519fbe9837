/** Kinds of field that forms are made of. */
import { lookUp } from "../../format/look-up.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import type { Field, Value, Values } from "../form.ts";

/** What `=` means in any field: the value that stands there. */
export const AS_SHOWN = "=";

const NUMBER = /^-?\d{1,6}([.,]\d{1,4})?$/;

/** A number with a point or a comma, below zero where that makes sense. */
export function readNumber(text: string, example: string): Outcome<number> {
  if (!NUMBER.test(text)) return refused(`"${text}" is not a number: type such as ${example}.`);
  return taken(Number(text.replace(",", ".")));
}

type NumberField = {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly standing: number | undefined;
  readonly lowest: number;
  readonly highest: number;
  readonly example: string;
  /** Other units that may be typed behind the number, and what one of them is in the field's own. */
  readonly units?: Readonly<Record<string, number>>;
  readonly warn?: (value: number, soFar: Values) => string | null;
};

/** A number, with one of the units behind it or none. */
function readIn(text: string, units: Readonly<Record<string, number>>, example: string): Outcome<number> {
  const found = /^(.*?\d)\s*([a-z]+)$/i.exec(text);
  const factor = found ? lookUp(units, (found[2] as string).toLowerCase()) : 1;
  const number = readNumber(found?.[1] ?? text, example);
  if (factor !== undefined) return andThen(number, (value) => taken(value * factor));
  return refused(`"${text}" has no unit that is known here: type such as ${example}.`);
}

/** A number between two bounds beyond which it cannot be meant at all. */
export function numberField({
  id,
  label,
  unit,
  units = {},
  standing,
  lowest,
  highest,
  example,
  warn,
}: NumberField): Field {
  const within = (value: number): Outcome<Value> =>
    value < lowest || value > highest
      ? refused(`${value} ${unit} cannot be ${label}: it lies between ${lowest} and ${highest}.`)
      : taken(value);
  const field: Field = {
    id,
    label,
    unit,
    standing: standing === undefined ? "" : String(Number(standing.toFixed(2))),
    read: (text) =>
      andThen(
        text === AS_SHOWN && standing !== undefined ? taken(standing) : readIn(text, units, example),
        within,
      ),
  };
  return warn ? { ...field, warn: (value, soFar) => warn(Number(value), soFar) } : field;
}

/** Words, as they are typed. */
export const textField = (id: string, label: string, standing: string | undefined): Field => ({
  id,
  label,
  unit: "",
  standing: standing ?? "",
  read: (text) => taken(text === AS_SHOWN && standing ? standing : text.slice(0, 400)),
});

/** One of a few words, by its first letters. */
export const choiceField = (
  id: string,
  label: string,
  standing: string | undefined,
  choices: readonly string[],
): Field => ({
  id,
  label,
  unit: "",
  standing: standing ?? choices.map((choice) => choice[0]).join("/"),
  read: (text) => {
    const chosen = choices.find((choice) => choice.toLowerCase().startsWith(text.toLowerCase()));
    if (text === AS_SHOWN && standing) return taken(standing);
    return chosen
      ? taken(chosen)
      : refused(`"${text}" is not one of ${choices.join(", ")}: type its first letter.`);
  },
});

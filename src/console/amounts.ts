/** Numbers and volumes as people type them: a comma or a point, litres or millilitres. */
import { lookUp } from "../format/look-up.ts";
import { type Outcome, refused, taken } from "../format/outcome.ts";

const NUMBER = /^\d{1,7}([.,]\d{1,4})?$/;
const WITH_UNIT = /^(\d{1,7}(?:[.,]\d{1,4})?)([a-zµ%/°]*)$/i;
/** Half the world reads `28,000` as twenty-eight and half as thousands: only behind litres is it plain. */
const AMBIGUOUS = /^[1-9]\d{0,2}[.,]\d{3}(?![\dl])/i;

/** A number without a sign, `null` when it is none or could be read in two ways. */
export const numberOf = (text: string): number | null =>
  NUMBER.test(text) && !AMBIGUOUS.test(text) ? Number(text.replace(",", ".")) : null;

/** A number and the letters behind it: `1,2L` is 1.2 and `l`; `null` when it is none or could be read in two ways. */
export function numberAndUnit(text: string): { value: number; unit: string } | null {
  const found = AMBIGUOUS.test(text) ? null : WITH_UNIT.exec(text);
  return found
    ? { value: Number((found[1] as string).replace(",", ".")), unit: (found[2] as string).toLowerCase() }
    : null;
}

/** Millilitres: `1200`, `1200ml`, `1.2L` and `1,2L` are the same. */
export function volumeOf(text: string): Outcome<number> {
  const found = numberAndUnit(text);
  const factor = found && lookUp({ "": 1, ml: 1, l: 1000 }, found.unit);
  if (!found || !factor)
    return refused(`${notThat(text, "a volume")}: type millilitres such as 300, or litres such as 1.2L.`);
  const ml = Math.round(found.value * factor * 1000) / 1000;
  return ml > 100_000
    ? refused(`${text} is more than a hundred litres: type millilitres such as 300.`)
    : taken(ml);
}

/** How a refusal begins: `"abc" is not a flow`, or `Nothing typed`. */
export const notThat = (typed: string | undefined, what: string): string =>
  typed === undefined || typed === "" ? "Nothing typed" : `"${typed}" is not ${what}`;

/** A number between two bounds, with the sentence to say when it is not. */
export function numberWithin(
  text: string | undefined,
  what: string,
  unit: string,
  lowest: number,
  highest: number,
  example: string,
): Outcome<number> {
  const found = text === undefined ? null : numberAndUnit(text);
  const letters = (shown: string) => shown.toLowerCase().replace("°", "");
  if (!found || !["", letters(unit)].includes(letters(found.unit))) {
    return refused(`${notThat(text, what)}: type ${unit === "s" ? "seconds" : unit} such as ${example}.`);
  }
  if (found.value < lowest || found.value > highest) {
    return refused(`${found.value} ${unit} cannot be ${what}: type one between ${lowest} and ${highest}.`);
  }
  return taken(found.value);
}

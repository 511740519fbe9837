/** i: a drug, its name completed from the protocol's list, or as it is typed. */
import { lookUp } from "../../format/look-up.ts";
import { plain } from "../../format/number.ts";
import { andThen, type Outcome, refused, taken } from "../../format/outcome.ts";
import { listed } from "../../format/text.ts";
import { unitText } from "../../format/unit.ts";
import type { Drug } from "../../protocol/drugs.ts";
import type { Draft } from "../../record/entry.ts";
import { numberAndUnit } from "../amounts.ts";
import { readChecked } from "../checked.ts";
import type { EntryStroke } from "../stroke.ts";

/** Units as people type them, by their UCUM codes. */
const UNITS: Readonly<Record<string, string>> = {
  mg: "mg",
  g: "g",
  ug: "ug",
  µg: "ug",
  mcg: "ug",
  ml: "mL",
  mmol: "mmol",
  meq: "meq",
  iu: "[IU]",
  u: "[IU]",
  "%": "%",
};

const LONGEST_NAME = 60;

type Said = { readonly name: string; readonly amount: number; readonly unit: string };

/** Drugs of the list whose name begins so, or holds a word that does. */
function drugsLike(typed: string, drugs: readonly Drug[]): readonly Drug[] {
  const wanted = typed.toLowerCase();
  const begins = drugs.filter(({ name }) => name.toLowerCase().startsWith(wanted));
  return begins.length > 0 ? begins : drugs.filter(({ name }) => name.toLowerCase().includes(` ${wanted}`));
}

/** The name up to the first number, then the amount and, where it is not the usual one, the unit. */
function readDrug(words: readonly string[], drugs: readonly Drug[]): Outcome<Said> {
  const place = words.findIndex((word) => /^\d/.test(word));
  const typed = words.slice(0, place < 0 ? words.length : place).join(" ");
  if (typed.length > LONGEST_NAME)
    return refused(
      `That is more than a name: type the drug in ${LONGEST_NAME} letters at the most, then the dose.`,
    );
  if (typed === "")
    return refused("Nothing typed: type the drug, the dose and its unit, such as noradrenaline 10 ug.");
  const like = drugsLike(typed, drugs);
  const exact = like.find(({ name }) => name.toLowerCase() === typed.toLowerCase());
  const drug = exact ?? (like.length === 1 ? like[0] : undefined);
  const found = place < 0 ? null : numberAndUnit(words.slice(place).join(""));
  if (!found)
    return refused(drug ? howMuch(drug) : `How much ${typed}: type the dose and its unit, such as 10 mg.`);
  if (!drug && like.length > 1)
    return refused(
      `"${typed}" could be ${listed(
        like.slice(0, 4).map(({ name }) => name),
        "or",
      )}: type more of its name.`,
    );
  const unit = found.unit === "" ? drug?.unit : lookUp(UNITS, found.unit);
  if (!unit)
    return refused(
      found.unit === ""
        ? `No unit given: type one behind the dose, such as ${found.value} mg.`
        : `"${found.unit}" is no unit here: type mg, g, ug, mL, mmol, meq or IU.`,
    );
  if (found.value > 1_000_000)
    return refused(
      `${found.value} ${unitText(unit)} is more than a million: type the dose in a larger unit.`,
    );
  return taken({ name: drug?.id ?? typed, amount: found.value, unit });
}

const howMuch = ({ name, unit, usualDose }: Drug): string =>
  `How much ${name}: type the dose in ${unitText(unit)}${usualDose ? ` (usually ${plain(usualDose)})` : ""}.`;

export const drug: EntryStroke = {
  key: "i",
  id: "drug",
  short: "drug",
  name: "drug",
  opens: "line",
  takes: "name (completed as you type), dose, unit; /AB is the second person's initials",
  likely: ["on bypass", "arrested", "reperfusing", "weaning"],
  example: "i norad 10",
  asks: () => "name, dose, unit; /AB who checked it",
  choices: ({ run }, text) => {
    const typed = text.split(/\d/)[0]?.trim() ?? "";
    return drugsLike(typed, run.course.protocol.drugs)
      .slice(0, 12)
      .map(({ name, unit }) => ["", `${name}, ${unitText(unit)}`] as const);
  },
  read: ({ words }, { run }) => {
    const { words: rest, ...checked } = readChecked(words);
    return andThen(
      readDrug(rest, run.course.protocol.drugs),
      (said): Outcome<Draft> => taken({ kind: "drug", ...said, ...checked }),
    );
  },
  reminds: (draft, { protocol }) => {
    if (draft.kind !== "drug") return null;
    const listed = protocol.drugs.find(({ id }) => id === draft.name);
    return listed?.askSecondPerson && !draft.checkedBy
      ? "The protocol asks for a second person: add /AB."
      : null;
  },
};

/** What a form told of the patient and the plan, in the words and the order in which people say it. */
import { plain } from "../format/number.ts";
import { unitText } from "../format/unit.ts";

type Told = { readonly [field: string]: unknown };

/** Fields with a unit of their own, the name before the number where the unit does not say what it is. */
const NUMBERS: readonly (readonly [field: string, name: string, unit: string])[] = [
  ["ageYears", "", "years"],
  ["weight", "", "kg"],
  ["height", "", "cm"],
  ["haematocrit", "Hct", "%"],
  ["haemoglobin", "Hb", "g/dL"],
  ["platelets", "platelets", "10*9/L"],
  ["creatinine", "creatinine", "umol/L"],
  ["sodium", "Na", ""],
  ["potassium", "K", ""],
  ["glucose", "glucose", "mmol/L"],
  ["flowIndex", "index", "L/min/m2"],
  ["fullFlow", "full flow", "L/min"],
  ["heparinPerKg", "heparin", "[IU]/kg"],
  ["targetTemperature", "target", "Cel"],
  ["targetHaematocrit", "wanted Hct", "%"],
];

const WORDS: readonly (readonly [field: string, name: string])[] = [
  ["allergies", "allergies:"],
  ["operation", ""],
  ["solution", ""],
  ["diagnosis", ""],
  ["bloodGroup", "group"],
  ["antibodies", "antibodies:"],
  ["infection", "infection:"],
  ["history", ""],
  ["number", "number"],
  ["name", ""],
  ["born", "born"],
];

/** A short phrase for every field that was told. */
export function toldWords(entry: Told): string[] {
  const sex = typeof entry.sex === "string" ? [entry.sex] : [];
  const numbers = NUMBERS.flatMap(([field, name, unit]) => {
    const value = entry[field];
    return typeof value === "number" ? [`${name} ${plain(value)} ${unitText(unit)}`.trim()] : [];
  });
  const words = WORDS.flatMap(([field, name]) => {
    const value = entry[field];
    return typeof value === "string" && value !== "" ? [`${name} ${value}`.trim()] : [];
  });
  const first = words.slice(0, entry.allergies ? 1 : 0);
  return [...first, ...sex, ...numbers, ...words.slice(first.length)];
}

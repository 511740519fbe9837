/** The small parts of a FHIR document: texts, codes, quantities, references and moments. */
import { type Instant, toIso } from "../format/instant.ts";
import { harmless } from "../format/text.ts";
import { unitText } from "../format/unit.ts";
import type { SeenCode } from "./fhir-codes.ts";
import type { Concept, Quantity } from "./fhir-types.ts";
import { escapedHtml } from "./html-parts.ts";

const UCUM = "http://unitsofmeasure.org";
const ABSENT_REASONS = "http://terminology.hl7.org/CodeSystem/data-absent-reason";

/** UCUM codes of everything the record keeps; a unit that somebody typed for a drug of their own may be none. */
export const UCUM_UNITS: ReadonlySet<string> = new Set([
  ...["mL", "L", "mL/min", "L/min", "mL/kg", "mL/kg/h", "L/min/m2", "mL/min/m2", "mL/m2", "mL/dL"],
  ...["mm[Hg]", "kPa", "Cel", "K", "K/min", "s", "min", "h", "a", "kg", "cm", "m2", "kg/m2", "%", "1"],
  ...["[IU]", "[IU]/kg", "mg", "g", "ug", "mg/kg", "mmol", "meq", "mmol/L", "umol/L", "g/dL", "g/L"],
  ...["[pH]", "10*9/L", "dyn.s/cm5", "dyn.s.m2/cm5", "mm[Hg].min/L", "mL/min", "ms", "/min"],
]);

/** A text on one line without anything that could be taken for markup's own; `undefined` for an empty one. */
export const textOf = (text: string | undefined): string | undefined => harmless(text ?? "") || undefined;

/** A concept by its name, with a code where one was seen. */
export function concept(name: string, code?: SeenCode): Concept {
  const text = harmless(name) || "not named";
  return code ? { coding: [{ system: code.system, code: code.code }], text } : { text };
}

/** A quantity in a UCUM unit; a unit that is none is told as it was typed. */
export function quantity(value: number, unit: string): Quantity {
  if (UCUM_UNITS.has(unit)) return { value, unit: unitText(unit) || unit, system: UCUM, code: unit };
  return { value, unit: harmless(unit) || "not told" };
}

/** Why there is no value, as FHIR tells it. */
export const absent = (why: string): Concept => ({
  coding: [{ system: ABSENT_REASONS, code: "unknown" }],
  text: harmless(why) || "not recorded",
});

/** A moment as FHIR writes it, at the offset of the report. */
export const momentOf = (ms: number, { offset }: Pick<Instant, "offset">): string => toIso({ ms, offset });

/** Fields with something in them: FHIR knows no empty ones. */
export const filled = <T extends object>(fields: T): T =>
  Object.fromEntries(
    Object.entries(fields).filter(
      ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
    ),
  ) as T;

// Two numbers that are no characters, which XML refuses.
const NO_CHARACTERS = /[\uFFFE\uFFFF]/g;

/** A narrative of one paragraph a line. */
export const narrative = (lines: readonly string[]) => ({
  status: "generated",
  div: `<div xmlns="http://www.w3.org/1999/xhtml">${lines.map((line) => `<p>${escapedHtml(line.replace(NO_CHARACTERS, ""))}</p>`).join("")}</div>`,
});

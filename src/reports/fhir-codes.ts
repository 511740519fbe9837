/**
 * The codes that the FHIR document uses, each with where it was seen in use. What has no code that was seen on a page
 * is told by its name alone. Displays are left to the reader's own terminology server.
 */
import type { GasName, ReadingName } from "../record/quantities.ts";
import type { Coding } from "./fhir-types.ts";

export type SeenCode = Coding & { readonly seen: string };

/** LOINC names for intensive care, MIT-LCP/mimic-code, mimic-iv/mapping, commit 8bcbd19. */
const A = "MIT-LCP/mimic-code, mimic-iv/mapping";
/** Profiles for intensive care, medizininformatik-initiative/kerndatensatzmodul-intensivmedizin, commit f94ca2c. */
const B = "medizininformatik-initiative/kerndatensatzmodul-intensivmedizin";
const BOTH = `${A}; ${B}`;

const loinc = (code: string, seen: string): SeenCode => ({ system: "http://loinc.org", code, seen });
const snomed = (code: string, seen: string): SeenCode => ({ system: "http://snomed.info/sct", code, seen });

/** Glucose is not among them: the code that was seen counts mass, and the record keeps mmol/L. */
export const GAS_CODES: Partial<Record<GasName, SeenCode>> = {
  ph: loinc("11558-4", A),
  carbonDioxide: loinc("11557-6", A),
  oxygen: loinc("11556-8", A),
  bicarbonate: loinc("1959-6", A),
  baseExcess: loinc("11555-0", A),
  saturation: loinc("20564-1", A),
  haemoglobin: loinc("718-7", A),
  haematocrit: loinc("48703-3", A),
  sodium: loinc("2947-0", A),
  potassium: loinc("6298-4", A),
  calcium: loinc("1994-3", A),
  lactate: loinc("32693-4", A),
};

/** What is measured in the circuit has no code of the body's: outlet and venous line, water, sweep, reservoir. */
export const READING_CODES: Partial<Record<ReadingName, SeenCode>> = {
  flow: snomed("444479000", B),
  meanPressure: loinc("8478-0", BOTH),
  centralVenousPressure: loinc("60985-9", B),
  nasopharyngealTemperature: snomed("698831002", B),
  bladderTemperature: loinc("8334-5", B),
  rectalTemperature: loinc("8332-9", B),
};

/** The patient as told before the run; creatinine is kept in µmol/L and its code counts mass, so it has none. */
export const PATIENT_CODES: Readonly<Record<string, SeenCode>> = {
  weight: loinc("29463-7", BOTH),
  height: loinc("8302-2", BOTH),
  haemoglobin: loinc("718-7", A),
  haematocrit: loinc("48703-3", A),
  sodium: loinc("2947-0", A),
  potassium: loinc("6298-4", A),
};

export const ACT_CODE: SeenCode = loinc("3184-9", "healthassure.in; findacode.com; NorDx laboratory page");

export const FIGURE_CODES: Readonly<Record<string, SeenCode>> = {
  fluidIn: loinc("9103-3", B),
  out: loinc("9257-7", B),
  urine: loinc("9187-6", B),
  ultrafiltrate: loinc("99741-1", B),
  net: snomed("251856003", B),
};

export const SPAN_CODES: Readonly<Record<string, SeenCode>> = {
  bypass: snomed("63697000", "two public repositories with this meaning (two others mislabel it)"),
  clamp: snomed("301882004", "one public value table"),
  ultrafiltration: snomed("182750009", B),
};

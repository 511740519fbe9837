/** The size of the body: mass index, lean mass, and the surface by each formula. */
import { fixed, plain } from "../format/number.ts";
import { FROM_MEMORY } from "../protocol/decision.ts";
import { bodySurface, SURFACE_FORMULAS, type SurfaceFormula } from "./body-surface.ts";
import { derived, given } from "./derived.ts";
import { type Figure, missing } from "./figure.ts";
import type { Patient } from "./patient.ts";

/** Kilograms a square metre; weight in kg, height in cm. */
export const bodyMassIndexOf = (weight: number, height: number): number => weight / (height / 100) ** 2;

/** In kg, as last told. */
export const weightOf = (patient: Patient): Figure => given(patient.weight, "kg", "weight");
/** In cm, as last told. */
export const heightOf = (patient: Patient): Figure => given(patient.height, "cm", "height");

/** Body mass index in kg/m²: weight in kg over the square of the height in metres. */
export const bodyMassIndex = (patient: Patient): Figure =>
  derived("kg/m2", [weightOf(patient), heightOf(patient)], (weight, height) => ({
    value: bodyMassIndexOf(weight, height),
    working: `${plain(weight)} kg / (${plain(height / 100)} m)²`,
    source: "the definition",
  }));

/** What Janmahasatian's formula takes off for the body mass index: lean mass = 9270 × W / (a + b × BMI). */
const LEAN = { male: [6680, 216], female: [8780, 244] } as const;

/** Lean mass in kg, after Janmahasatian, from memory: from weight, height and sex. */
export function leanMass(patient: Patient): Figure {
  const { sex } = patient;
  if (sex !== "male" && sex !== "female") return missing("kg", "no sex recorded");
  const [base, slope] = LEAN[sex];
  return derived("kg", [weightOf(patient), bodyMassIndex(patient)], (weight, index) => ({
    value: (9270 * weight) / (base + slope * index),
    working: `${sex}: 9270 × ${plain(weight)} kg / (${base} + ${slope} × ${fixed(index, 1)} kg/m²)`,
    source: `Janmahasatian S et al. 2005, ${FROM_MEMORY}`,
  }));
}

/** The body surface in m² by every formula there is. */
export const bodySurfaces = (patient: Patient): readonly { formula: SurfaceFormula; area: Figure }[] =>
  (Object.keys(SURFACE_FORMULAS) as SurfaceFormula[]).map((formula) => ({
    formula,
    area: bodySurface(formula, patient.weight, patient.height),
  }));

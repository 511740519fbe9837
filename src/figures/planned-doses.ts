/** Doses before the run: heparin and protamine with the volume to draw up, and the arrest solution. */
import { grouped, plain } from "../format/number.ts";
import type { PlannedDose, Solution } from "../protocol/arrest.ts";
import { COMMON_PRACTICE, type Decision } from "../protocol/decision.ts";
import { crystalloidPart, type Protocol } from "../protocol/protocol.ts";
import { weightOf } from "./body.ts";
import { protamineAt } from "./coagulation.ts";
import { heparinMilligrams } from "./conversions.ts";
import { derived } from "./derived.ts";
import { type Figure, missing } from "./figure.ts";
import type { Patient, Plan } from "./patient.ts";

type Coagulation = Protocol["coagulation"];

/** Heparin before bypass in IU: IU/kg of the plan, else of the protocol, × weight in kg. */
export function heparinDose(patient: Patient, plan: Plan, { heparinPerKg }: Coagulation): Figure {
  const planned = plan.heparinPerKg;
  const perKg: Decision = planned === undefined ? heparinPerKg : { value: planned, source: "as planned" };
  return derived("[IU]", [weightOf(patient)], (weight) => ({
    value: perKg.value * weight,
    working: `${plain(perKg.value)} IU/kg × ${plain(weight)} kg`,
    source: perKg.source,
  }));
}

/** An amount of heparin in the unit that is shown, IU or mg, with what a milligram stands for said beside it. */
export const heparinShown = (dose: Figure, { shown, coagulation: { heparinIuPerMg } }: Protocol): Figure =>
  shown.heparin === "[IU]"
    ? dose
    : derived("mg", [dose], (units) => ({
        value: heparinMilligrams(units, heparinIuPerMg.value),
        working: `${dose.working} = ${grouped(units)} IU, at ${plain(heparinIuPerMg.value)} IU/mg`,
        source: dose.source,
      }));

/** Millilitres of heparin to draw up for a dose in IU. */
export const heparinVolume = (dose: Figure, { heparinStrength }: Coagulation): Figure =>
  derived("mL", [dose], (units) => ({
    value: units / heparinStrength.value,
    working: `${grouped(units)} IU / ${plain(heparinStrength.value)} IU/mL`,
    source: heparinStrength.source,
  }));

/** Protamine in mg for the planned heparin in IU, never above the protocol's cap. */
export function protaminePlanned(heparin: Figure, { protamineRatio, protamineCap }: Coagulation): Figure {
  if (heparin.value === null) return missing("mg", heparin.working);
  const isCapped = protamineRatio.value > protamineCap.value;
  const figure = protamineAt(heparin.value, "first", isCapped ? protamineCap : protamineRatio);
  return isCapped ? { ...figure, working: `${figure.working} (the most allowed)` } : figure;
}

/** Millilitres of protamine to draw up for a dose in mg. */
export const protamineVolume = (dose: Figure, { protamineStrength }: Coagulation): Figure =>
  derived("mL", [dose], (milligrams) => ({
    value: milligrams / protamineStrength.value,
    working: `${plain(milligrams)} mg / ${plain(protamineStrength.value)} mg/mL`,
    source: protamineStrength.source,
  }));

/** A dose of arrest solution in mL: so much a kilogram or fixed, never above its ceiling. */
export function solutionDose(dose: PlannedDose | undefined, patient: Patient): Figure {
  if (!dose) return missing("mL", "the protocol plans no such dose");
  const { perKg, fixed: whole, ceiling } = dose;
  const inputs = perKg ? [weightOf(patient)] : [];
  return derived("mL", inputs, (weight = 0) => {
    const wanted = perKg ? perKg.value * weight : (whole?.value ?? 0);
    const working = perKg ? `${plain(perKg.value)} mL/kg × ${plain(weight)} kg` : `${plain(wanted)} mL fixed`;
    return ceiling && wanted > ceiling.value
      ? {
          value: ceiling.value,
          working: `${working} = ${plain(wanted)} mL, at most ${plain(ceiling.value)} mL`,
          source: ceiling.source,
        }
      : { value: wanted, working, source: (perKg ?? whole)?.source };
  });
}

/** The crystalloid in so many mL of a solution: × crystalloid / (blood + crystalloid). */
export const crystalloidOf = (volume: Figure, solution: Solution): Figure =>
  derived("mL", [volume], (ml) => ({
    value: ml * crystalloidPart(solution),
    working: `${plain(ml)} mL × ${plain(solution.crystalloid)} / (${plain(solution.blood)} + ${plain(solution.crystalloid)})`,
    source: solution.ratioSource ?? COMMON_PRACTICE,
  }));

/** Values between the unit that a protocol shows and the one that the record keeps. */
import { lookUp } from "../format/look-up.ts";
import type { ShownUnits } from "../protocol/units.ts";

/** A unit that may be shown in the place of the canonical one, and how many of it make one of that. */
type Other = { readonly setting: keyof ShownUnits; readonly unit: string; readonly perCanonical: number };

/** UCUM sets a mmHg at 133.322 Pa. */
export const KPA_PER_MMHG = 0.133322;
/** From the molar mass of 180.156 g/mol. */
export const GLUCOSE_MG_DL_PER_MMOL_L = 18.0156;
/** From the molar mass of 90.08 g/mol. */
export const LACTATE_MG_DL_PER_MMOL_L = 9.008;

const pressure: Other = { setting: "gasPressure", unit: "kPa", perCanonical: KPA_PER_MMHG };

const OTHERS: Readonly<Record<string, Other>> = {
  oxygen: pressure,
  carbonDioxide: pressure,
  glucose: { setting: "glucose", unit: "mg/dL", perCanonical: GLUCOSE_MG_DL_PER_MMOL_L },
  lactate: { setting: "lactate", unit: "mg/dL", perCanonical: LACTATE_MG_DL_PER_MMOL_L },
  haemoglobin: { setting: "haemoglobin", unit: "g/L", perCanonical: 10 },
};

/** The UCUM code of the unit in which a quantity of the record is shown and typed: mostly the canonical one. */
export function shownUnit(quantity: string, canonical: string, shown: ShownUnits): string {
  const other = lookUp(OTHERS, quantity);
  return other && shown[other.setting] === other.unit ? other.unit : canonical;
}

/** A value typed in the shown unit, in the one that the record keeps. */
export const toCanonical = (quantity: string, unit: string, value: number): number =>
  value / factorOf(quantity, unit);

/** A value of the record, in the unit that is shown. */
export const toShown = (quantity: string, unit: string, value: number): number =>
  value * factorOf(quantity, unit);

function factorOf(quantity: string, unit: string): number {
  const other = lookUp(OTHERS, quantity);
  return other?.unit === unit ? other.perCanonical : 1;
}

/** Milligrams of heparin in so many IU, at so many IU a milligram. */
export const heparinMilligrams = (units: number, perMilligram: number): number => units / perMilligram;

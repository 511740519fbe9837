/** What the form for the patient and the plan asks, as tables. */
import type { Quantity } from "../../record/quantities.ts";

const WEIGHTS = { kg: 1, g: 0.001, lb: 0.45359237 };
const HEIGHTS = { cm: 1, m: 100, in: 2.54 };

/** Each field of the form by its name, and of which field of the record it tells. */
export const PATIENT_NUMBERS = [
  { id: "age", of: "ageYears", label: "age", unit: "years", lowest: 0, highest: 130, example: "64" },
  {
    id: "weight",
    of: "weight",
    label: "weight",
    unit: "kg",
    lowest: 0.2,
    highest: 400,
    example: "78",
    units: WEIGHTS,
  },
  {
    id: "height",
    of: "height",
    label: "height",
    unit: "cm",
    lowest: 0.3,
    highest: 260,
    example: "172",
    units: HEIGHTS,
  },
] as const;

export const PATIENT_WORDS = [
  { id: "number", of: "number", label: "local number" },
  { id: "blood", of: "bloodGroup", label: "blood group" },
  { id: "antibodies", of: "antibodies", label: "antibodies" },
  { id: "allergies", of: "allergies", label: "allergies" },
  { id: "infection", of: "infection", label: "infection" },
  { id: "diagnosis", of: "diagnosis", label: "diagnosis" },
  { id: "history", of: "history", label: "history" },
] as const;

/** A quantity between two bounds beyond which it cannot be meant at all. */
export type Measured = Quantity & { readonly lowest: number; readonly highest: number };

const measuredBefore = (
  name: string,
  short: string,
  unit: string,
  decimals: number,
  highest: number,
): Measured => ({ name, short, unit, decimals, lowest: 0, highest });

/** What the figures need of the blood, and what else the laboratory told before the run; each by its name in the record. */
export const BLOOD = [
  measuredBefore("haematocrit", "Hct", "%", 0, 90),
  measuredBefore("haemoglobin", "Hb", "g/dL", 1, 30),
];
export const LABORATORY = [
  measuredBefore("potassium", "K", "mmol/L", 1, 15),
  measuredBefore("sodium", "Na", "mmol/L", 0, 250),
  measuredBefore("glucose", "glucose", "mmol/L", 1, 80),
  measuredBefore("creatinine", "creat", "umol/L", 0, 3000),
  measuredBefore("platelets", "plt", "10*9/L", 0, 3000),
];

export const PLAN_NUMBERS = [
  {
    id: "index",
    of: "flowIndex",
    label: "flow index",
    unit: "L/min/m²",
    lowest: 0.5,
    highest: 6,
    example: "2.4",
  },
  {
    id: "full",
    of: "fullFlow",
    label: "full flow",
    unit: "L/min",
    lowest: 0.05,
    highest: 15,
    example: "4.6",
  },
  {
    id: "heparin",
    of: "heparinPerKg",
    label: "heparin",
    unit: "IU/kg",
    lowest: 20,
    highest: 1500,
    example: "400",
  },
  {
    id: "temperature",
    of: "targetTemperature",
    label: "target",
    unit: "°C",
    lowest: 5,
    highest: 42,
    example: "32",
  },
  {
    id: "wanted-Hct",
    of: "targetHaematocrit",
    label: "wanted Hct",
    unit: "%",
    lowest: 5,
    highest: 70,
    example: "25",
  },
] as const;

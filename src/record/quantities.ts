/** Everything that is measured, in the unit the record keeps it in whatever unit was typed. */
import * as z from "zod";

export type Quantity = { readonly name: string; readonly unit: string; readonly decimals: number };

const of = (name: string, unit: string, decimals = 0): Quantity => ({ name, unit, decimals });

/** Readings of the pump and the patient (`s`). */
export const READINGS = {
  flow: of("pump flow", "L/min", 2),
  meanPressure: of("mean arterial pressure", "mm[Hg]"),
  centralVenousPressure: of("central venous pressure", "mm[Hg]"),
  linePressure: of("line pressure", "mm[Hg]"),
  arterialTemperature: of("arterial outlet temperature", "Cel", 1),
  venousTemperature: of("venous blood temperature", "Cel", 1),
  nasopharyngealTemperature: of("nasopharyngeal temperature", "Cel", 1),
  bladderTemperature: of("bladder temperature", "Cel", 1),
  rectalTemperature: of("rectal temperature", "Cel", 1),
  waterTemperature: of("water bath temperature", "Cel", 1),
  venousSaturation: of("venous saturation", "%"),
  cerebralLeft: of("cerebral saturation, left", "%"),
  cerebralRight: of("cerebral saturation, right", "%"),
  sweep: of("sweep gas", "L/min", 1),
  inspiredOxygen: of("FiO2", "%"),
  addedCarbonDioxide: of("carbon dioxide added", "L/min", 2),
  volatile: of("volatile agent", "%", 1),
  vacuum: of("vacuum on the reservoir", "mm[Hg]"),
  reservoir: of("reservoir level", "mL"),
  haematocrit: of("haematocrit in line", "%", 1),
} as const satisfies Record<string, Quantity>;

/** Blood gas and laboratory values (`g`). */
export const GAS_VALUES = {
  ph: of("pH", "[pH]", 2),
  carbonDioxide: of("pCO2", "mm[Hg]"),
  oxygen: of("pO2", "mm[Hg]"),
  bicarbonate: of("bicarbonate", "mmol/L", 1),
  baseExcess: of("base excess", "mmol/L", 1),
  saturation: of("oxygen saturation", "%", 1),
  haemoglobin: of("haemoglobin", "g/dL", 1),
  haematocrit: of("haematocrit", "%", 1),
  sodium: of("sodium", "mmol/L"),
  potassium: of("potassium", "mmol/L", 1),
  calcium: of("ionised calcium", "mmol/L", 2),
  glucose: of("glucose", "mmol/L", 1),
  lactate: of("lactate", "mmol/L", 1),
} as const satisfies Record<string, Quantity>;

export type ReadingName = keyof typeof READINGS;
export type GasName = keyof typeof GAS_VALUES;

/** Any subset of a table's quantities: what was not entered stays unknown. */
export function someOf<N extends string>(table: Record<N, Quantity>) {
  const shape = {} as Record<N, z.ZodOptional<z.ZodNumber>>;
  for (const key of Object.keys(table) as N[]) {
    const { name, unit } = table[key];
    shape[key] = z.number().min(-10_000).max(100_000).meta({ unit, description: name }).optional();
  }
  return z.looseObject(shape);
}

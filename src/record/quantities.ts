/** Everything that is measured, in the unit the record keeps it in whatever unit was typed. */
export type Quantity = {
  readonly name: string;
  /** A word for a log row or a form. */
  readonly short: string;
  /** UCUM code of the unit the record keeps. */
  readonly unit: string;
  readonly decimals: number;
};

const of = (name: string, short: string, unit: string, decimals = 0): Quantity => ({
  name,
  short,
  unit,
  decimals,
});

/** Readings of the pump and the patient (`s`). */
export const READINGS = {
  flow: of("pump flow", "flow", "L/min", 2),
  meanPressure: of("mean arterial pressure", "MAP", "mm[Hg]"),
  centralVenousPressure: of("central venous pressure", "CVP", "mm[Hg]"),
  linePressure: of("line pressure", "line", "mm[Hg]"),
  arterialTemperature: of("arterial outlet temperature", "art", "Cel", 1),
  venousTemperature: of("venous blood temperature", "ven", "Cel", 1),
  nasopharyngealTemperature: of("nasopharyngeal temperature", "naso", "Cel", 1),
  bladderTemperature: of("bladder temperature", "bladder", "Cel", 1),
  rectalTemperature: of("rectal temperature", "rectal", "Cel", 1),
  waterTemperature: of("water bath temperature", "water", "Cel", 1),
  venousSaturation: of("venous saturation", "SvO2", "%"),
  cerebralLeft: of("cerebral saturation, left", "NIRS-L", "%"),
  cerebralRight: of("cerebral saturation, right", "NIRS-R", "%"),
  sweep: of("sweep gas", "sweep", "L/min", 1),
  inspiredOxygen: of("FiO2", "FiO2", "%"),
  addedCarbonDioxide: of("carbon dioxide added", "CO2", "L/min", 2),
  volatile: of("volatile agent", "volatile", "%", 1),
  vacuum: of("vacuum on the reservoir", "vacuum", "mm[Hg]"),
  reservoir: of("reservoir level", "level", "mL"),
  haematocrit: of("haematocrit in line", "Hct", "%", 1),
} as const satisfies Record<string, Quantity>;

/** Blood gas and laboratory values (`g`). */
export const GAS_VALUES = {
  ph: of("pH", "pH", "[pH]", 2),
  carbonDioxide: of("pCO2", "pCO2", "mm[Hg]"),
  oxygen: of("pO2", "pO2", "mm[Hg]"),
  bicarbonate: of("bicarbonate", "HCO3", "mmol/L", 1),
  baseExcess: of("base excess", "BE", "mmol/L", 1),
  saturation: of("oxygen saturation", "sat", "%", 1),
  haemoglobin: of("haemoglobin", "Hb", "g/dL", 1),
  haematocrit: of("haematocrit", "Hct", "%", 1),
  sodium: of("sodium", "Na", "mmol/L"),
  potassium: of("potassium", "K", "mmol/L", 1),
  calcium: of("ionised calcium", "Ca", "mmol/L", 2),
  glucose: of("glucose", "glu", "mmol/L", 1),
  lactate: of("lactate", "lac", "mmol/L", 1),
} as const satisfies Record<string, Quantity>;

export type ReadingName = keyof typeof READINGS;
export type GasName = keyof typeof GAS_VALUES;

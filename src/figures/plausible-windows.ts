/** Between what a value may be expected, and what may have been meant by one that lies outside. */
import { GLUCOSE_MG_DL_PER_MMOL_L, KPA_PER_MMHG, LACTATE_MG_DL_PER_MMOL_L } from "./conversions.ts";

/** Another way to read a number, `in pounds`, and the canonical value it would then be. */
export type Slip = { readonly read: string; readonly meant: (value: number) => number };

/** What is usual, in the canonical unit, both ends included; wide enough for the newborn and the very ill. */
export type Window = {
  readonly name: string;
  /** UCUM code. */
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly slips: readonly Slip[];
};

const times = (unit: string, factor: number): Slip => ({
  read: `in ${unit}`,
  meant: (value) => value * factor,
});

const fraction: Slip = { read: "as a fraction", meant: (value) => value * 100 };
const litres = times("L", 1000);
const millilitresAMinute = times("mL/min", 1 / 1000);
const fahrenheit: Slip = { read: "in °F", meant: (value) => (value - 32) / 1.8 };
const gasUnits = [times("kPa", 1 / KPA_PER_MMHG), times("mmHg", KPA_PER_MMHG)];

const window = (
  name: string,
  unit: string,
  low: number,
  high: number,
  ...slips: readonly Slip[]
): Window => ({ name, unit, low, high, slips });

const percent = (name: string, low: number, high: number) => window(name, "%", low, high, fraction);
const temperature = (name: string, low: number) => window(name, "Cel", low, 42, fahrenheit);

/** Fields of the patient, the plan, the readings and the gas, by their names in the record. */
export const WINDOWS: Readonly<Record<string, Window>> = {
  height: window(
    "height",
    "cm",
    25,
    230,
    times("metres", 100),
    times("feet", 30.48),
    times("millimetres", 0.1),
    times("inches", 2.54),
  ),
  weight: window("weight", "kg", 0.3, 200, times("grams", 1 / 1000), times("pounds", 0.453_592)),
  haemoglobin: window("haemoglobin", "g/dL", 3, 25, times("g/L", 1 / 10), times("g/dL", 10)),
  haematocrit: percent("haematocrit", 10, 70),
  targetHaematocrit: percent("wanted haematocrit", 12, 60),
  glucose: window(
    "glucose",
    "mmol/L",
    1.5,
    40,
    times("mg/dL", 1 / GLUCOSE_MG_DL_PER_MMOL_L),
    times("mmol/L", GLUCOSE_MG_DL_PER_MMOL_L),
  ),
  lactate: window(
    "lactate",
    "mmol/L",
    0.3,
    25,
    times("mg/dL", 1 / LACTATE_MG_DL_PER_MMOL_L),
    times("mmol/L", LACTATE_MG_DL_PER_MMOL_L),
  ),
  oxygen: window("pO2", "mm[Hg]", 25, 700, ...gasUnits),
  carbonDioxide: window("pCO2", "mm[Hg]", 15, 120, ...gasUnits),
  ph: window("pH", "[pH]", 6.8, 7.8),
  potassium: window("potassium", "mmol/L", 1.5, 10),
  sodium: window("sodium", "mmol/L", 100, 180),
  creatinine: window("creatinine", "umol/L", 10, 1500, times("mg/dL", 88.42)),
  platelets: window("platelet count", "10*9/L", 5, 1500),
  calcium: window("ionised calcium", "mmol/L", 0.3, 3, times("mg/dL", 1 / 4.0078)),
  bicarbonate: window("bicarbonate", "mmol/L", 5, 50),
  baseExcess: window("base excess", "mmol/L", -25, 25),
  saturation: percent("oxygen saturation", 20, 100),
  flowIndex: window("flow index", "L/min/m2", 1, 4, times("mL/min/m²", 1 / 1000)),
  fullFlow: window("full flow", "L/min", 0.1, 9, millilitresAMinute),
  flow: window("pump flow", "L/min", 0, 9, millilitresAMinute),
  heparinPerKg: window("heparin", "[IU]/kg", 100, 800, times("mg/kg", 100)),
  prime: window("prime", "mL", 100, 4000, litres),
  reservoir: window("reservoir level", "mL", 10, 8000, litres),
  meanPressure: window("mean arterial pressure", "mm[Hg]", 12, 160, times("kPa", 1 / KPA_PER_MMHG)),
  centralVenousPressure: window("central venous pressure", "mm[Hg]", -10, 50),
  linePressure: window("line pressure", "mm[Hg]", 0, 500),
  inspiredOxygen: percent("FiO2", 21, 100),
  venousSaturation: percent("venous saturation", 20, 100),
  cerebralLeft: percent("cerebral saturation, left", 15, 100),
  cerebralRight: percent("cerebral saturation, right", 15, 100),
  targetTemperature: temperature("temperature", 10),
  arterialTemperature: temperature("arterial outlet temperature", 5),
  venousTemperature: temperature("venous blood temperature", 5),
  nasopharyngealTemperature: temperature("nasopharyngeal temperature", 5),
  bladderTemperature: temperature("bladder temperature", 5),
  rectalTemperature: temperature("rectal temperature", 5),
  waterTemperature: temperature("water bath temperature", 2),
};

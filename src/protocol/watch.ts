/** What a unit wants watched: limits, intervals, and how long a reading may be relied on. */
import * as z from "zod";
import { decision, range } from "./decision.ts";

export const watch = z.looseObject({
  meanPressure: range("mm[Hg]", 0, 150),
  oxygenDelivery: decision("mL/min/m2", 100, 500),
  oxygenExtraction: decision("%", 5, 80),
  haematocritFloor: decision("%", 10, 45),
  glucose: range("mmol/L", 1, 30),
  potassium: range("mmol/L", 1, 9),
  carbonDioxide: range("mm[Hg]", 10, 90),
  urinePerKgPerHour: decision("mL/kg/h", 0, 5),
  readingsEvery: decision("min", 1, 120),
  gasEvery: decision("min", 5, 240),
  readingsHold: decision("min", 1, 120),
  gasHold: decision("min", 5, 240),
});

export const temperature = z.looseObject({
  /** The arterial outlet limit is broken at it, not above it. */
  outletLimit: decision("Cel", 34, 40),
  coolingGradient: decision("K", 1, 20),
  warmingGradientCold: decision("K", 1, 20),
  warmingGradientWarm: decision("K", 1, 20),
  /** From this outlet temperature on, the narrower gradient and the rate hold. */
  warmFrom: decision("Cel", 20, 37),
  warmingRate: decision("K/min", 0.05, 3),
});

export const oxygen = z.looseObject({
  /** Millilitres of oxygen a gram of haemoglobin carries (Hüfner). */
  perGram: decision("mL/g", 1.2, 1.5),
  dissolved: decision("mL/dL/mm[Hg]", 0.002, 0.004),
});

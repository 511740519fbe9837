/** What a unit wants watched: limits, intervals, and how long a reading may be relied on. */
import * as z from "zod";
import { decision, range } from "./numbers.ts";

export const watch = z
  .looseObject({
    meanPressure: range("mm[Hg]", 0, 150, "mean arterial pressure on bypass"),
    oxygenDelivery: decision("mL/min/m2", 100, 500, "oxygen delivery index that is not to be undercut"),
    oxygenExtraction: decision("%", 5, 80, "oxygen extraction that is not to be exceeded"),
    haematocritFloor: decision("%", 10, 45, "haematocrit that is not to be undercut"),
    glucose: range("mmol/L", 1, 30, "blood glucose"),
    potassium: range("mmol/L", 1, 9, "potassium"),
    carbonDioxide: range("mm[Hg]", 10, 90, "arterial carbon dioxide"),
    urinePerKgPerHour: decision("mL/kg/h", 0, 5, "urine that is not to be undercut"),
    readingsEvery: decision("min", 1, 120, "time from one set of readings to the next"),
    gasEvery: decision("min", 5, 240, "time from one gas to the next"),
    readingsHold: decision("min", 1, 120, "how long a reading is relied on"),
    gasHold: decision("min", 5, 240, "how long a gas is relied on"),
  })
  .describe("limits and intervals on bypass");

export const temperature = z
  .looseObject({
    outletLimit: decision("Cel", 34, 40, "arterial outlet temperature that is not to be reached"),
    coolingGradient: decision("K", 1, 20, "widest gradient from venous to arterial blood while cooling"),
    warmingGradientCold: decision("K", 1, 20, "widest gradient while warming with a cold outlet"),
    warmingGradientWarm: decision("K", 1, 20, "widest gradient while warming with a warm outlet"),
    warmFrom: decision("Cel", 20, 37, "outlet temperature from which it is warm, and the rate holds"),
    warmingRate: decision("K/min", 0.05, 3, "fastest warming with a warm outlet"),
  })
  .describe("cooling and warming");

export const oxygen = z
  .looseObject({
    perGram: decision("mL/g", 1.2, 1.5, "oxygen that a gram of haemoglobin carries (Hüfner)"),
    dissolved: decision("mL/dL/mm[Hg]", 0.002, 0.004, "oxygen dissolved in blood"),
  })
  .describe("constants of oxygen content");

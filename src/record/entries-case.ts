/** Entries about the case itself and its people: opened, closed, patient, plan, team, circuit, operator. */
import * as z from "zod";
import { entryOf, initials, millilitres, name, words } from "./base.ts";

const state = z.enum(["present", "missing", "not-applicable"]);

export const opened = entryOf("opened", { operator: initials, place: words.optional() });
export const closed = entryOf("closed", {
  operator: initials,
  /** The completeness list as it was shown when the case was closed. */
  completeness: z.array(z.looseObject({ item: words, state, standard: words.optional() })).optional(),
  /** The figures as they were when the case was closed, each with its UCUM code; without a value where it was not known. */
  figures: z.array(z.looseObject({ name, value: z.number().optional(), unit: words })).optional(),
});
export const reopened = entryOf("reopened", { operator: initials, reason: words });

export const patient = entryOf("patient", {
  /** A local number is enough; no name is required. */
  number: words.optional(),
  name: words.optional(),
  born: z.iso.date().optional(),
  ageYears: z.number().min(0).max(130).meta({ unit: "a" }).optional(),
  sex: z.enum(["male", "female", "unknown"]).optional(),
  weight: z.number().positive().max(400).meta({ unit: "kg" }).optional(),
  height: z.number().positive().max(260).meta({ unit: "cm" }).optional(),
  bloodGroup: words.optional(),
  antibodies: words.optional(),
  allergies: words.optional(),
  infection: words.optional(),
  diagnosis: words.optional(),
  history: words.optional(),
  haematocrit: z.number().min(0).max(90).meta({ unit: "%" }).optional(),
  haemoglobin: z.number().min(0).max(30).meta({ unit: "g/dL" }).optional(),
  platelets: z.number().min(0).max(3000).meta({ unit: "10*9/L" }).optional(),
  creatinine: z.number().min(0).max(3000).meta({ unit: "umol/L" }).optional(),
  potassium: z.number().min(0).max(15).meta({ unit: "mmol/L" }).optional(),
  sodium: z.number().min(0).max(250).meta({ unit: "mmol/L" }).optional(),
  glucose: z.number().min(0).max(80).meta({ unit: "mmol/L" }).optional(),
});

export const plan = entryOf("plan", {
  operation: words.optional(),
  flowIndex: z.number().positive().max(10).meta({ unit: "L/min/m2" }).optional(),
  /** Full flow as decided; left out, it follows from the index and the patient. */
  fullFlow: z.number().positive().max(15).meta({ unit: "L/min" }).optional(),
  solution: name.optional(),
  targetTemperature: z.number().min(5).max(42).meta({ unit: "Cel" }).optional(),
  heparinPerKg: z.number().positive().max(2000).meta({ unit: "[IU]/kg" }).optional(),
  targetHaematocrit: z.number().min(5).max(70).meta({ unit: "%" }).optional(),
  prime: z.array(z.looseObject({ fluid: name, ml: millilitres })).optional(),
  tubing: z
    .array(z.looseObject({ id: name, metres: z.number().min(0).max(30).meta({ unit: "m" }) }))
    .optional(),
});

export const team = entryOf("team", { people: z.array(z.looseObject({ role: name, who: words })) });

export const circuit = entryOf("circuit", {
  components: z.array(
    z.looseObject({
      component: name,
      size: words.optional(),
      lot: words.optional(),
      expires: words.optional(),
    }),
  ),
});

export const operator = entryOf("operator", {
  operator: initials,
  /** The handover summary as it was shown, a line each. */
  summary: z.array(words).optional(),
});

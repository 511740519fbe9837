/** Entries about the case itself and its people: opened, closed, patient, plan, team, circuit, operator. */
import * as z from "zod";
import { above0, between, entryOf, initials, millilitres, name, someWords, words } from "./base.ts";

const state = z.enum(["present", "missing", "not-applicable"]);

export const opened = entryOf("opened", { operator: initials, place: someWords });
export const closed = entryOf("closed", {
  operator: initials,
  /** The completeness list as it was shown when the case was closed. */
  completeness: z.array(z.looseObject({ item: words, state, standard: someWords })).optional(),
  /** The figures as they were when the case was closed, each with its UCUM code; without a value where it was not known. */
  figures: z.array(z.looseObject({ name, value: z.number().optional(), unit: words })).optional(),
});
export const reopened = entryOf("reopened", { operator: initials, reason: words });

export const patient = entryOf("patient", {
  /** A local number is enough; no name is required. */
  number: someWords,
  name: someWords,
  born: z.iso.date().optional(),
  ageYears: between(0, 130, "a").optional(),
  sex: z.enum(["male", "female", "unknown"]).optional(),
  weight: above0(400, "kg").optional(),
  height: above0(260, "cm").optional(),
  bloodGroup: someWords,
  antibodies: someWords,
  allergies: someWords,
  infection: someWords,
  diagnosis: someWords,
  history: someWords,
  haematocrit: between(0, 90, "%").optional(),
  haemoglobin: between(0, 30, "g/dL").optional(),
  platelets: between(0, 3000, "10*9/L").optional(),
  creatinine: between(0, 3000, "umol/L").optional(),
  potassium: between(0, 15, "mmol/L").optional(),
  sodium: between(0, 250, "mmol/L").optional(),
  glucose: between(0, 80, "mmol/L").optional(),
});

export const plan = entryOf("plan", {
  operation: someWords,
  flowIndex: above0(10, "L/min/m2").optional(),
  /** Full flow as decided; left out, it follows from the index and the patient. */
  fullFlow: above0(15, "L/min").optional(),
  solution: name.optional(),
  targetTemperature: between(5, 42, "Cel").optional(),
  heparinPerKg: above0(2000, "[IU]/kg").optional(),
  targetHaematocrit: between(5, 70, "%").optional(),
  prime: z.array(z.looseObject({ fluid: name, ml: millilitres })).optional(),
  tubing: z.array(z.looseObject({ id: name, metres: between(0, 30, "m") })).optional(),
});

export const team = entryOf("team", { people: z.array(z.looseObject({ role: name, who: words })) });

export const circuit = entryOf("circuit", {
  components: z.array(
    z.looseObject({
      component: name,
      size: someWords,
      lot: someWords,
      expires: someWords,
    }),
  ),
});

export const operator = entryOf("operator", {
  operator: initials,
  /** The handover summary as it was shown, a line each. */
  summary: z.array(words).optional(),
});

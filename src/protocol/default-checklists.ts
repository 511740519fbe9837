/** The checklists of the shipped protocols, worded by us along published categories. */
import type { Checklist } from "./checklists.ts";
import { CITED } from "./citations.ts";
import { FROM_MEMORY } from "./decision.ts";
import { beforeBypass } from "./default-checklist-before-bypass.ts";
import { grouped } from "./default-checklist-items.ts";

const beforeComingOff: Checklist = {
  id: "before-coming-off",
  letter: "o",
  name: "before coming off",
  remindAt: "bypass-off",
  source: CITED.beforeWeaning,
  items: [
    ...grouped("lungs", {
      ventilated: "Lungs ventilated, alarms of the ventilator on again",
      gases: "Last gas is in range: pH, carbon dioxide, oxygen",
    }),
    ...grouped("heart", {
      rhythm: "Rhythm carries, pacing at hand",
      "de-aired": "Heart de-aired, vent out or stopped",
      drugs: "Drugs to support the heart are running or ready",
    }),
    ...grouped("blood", {
      potassium: "Potassium, calcium and glucose are in range",
      haemoglobin: "Haemoglobin is enough",
      volume: "Volume for filling is in the reservoir",
    }),
    ...grouped("temperature", {
      warm: "Patient is warm through, core and periphery close",
    }),
    ...grouped("pump", {
      vacuum: "Vacuum on the reservoir is off",
      vapour: "Vapour on the pump is off, the anaesthetist knows",
      protamine: "Protamine is not drawn up before the heart carries",
    }),
  ],
};

const afterBypass: Checklist = {
  id: "after-bypass",
  letter: "a",
  name: "after bypass",
  remindAt: "closing",
  source: `${FROM_MEMORY}; worded by us`,
  items: [
    ...grouped("coming off", {
      "lines-clamped": "Lines clamped, gas and vapour off",
      "suckers-off": "Suckers off when protamine began",
      standby: "Circuit kept ready until the surgeon let it go",
    }),
    ...grouped("blood", {
      returned: "What was left in the pump is dealt with and entered",
      products: "Blood products given and sent back are accounted for",
      balance: "Fluid balance told to the anaesthetist",
    }),
    ...grouped("record", {
      times: "Bypass, clamp and dose times read through and right",
      drugs: "Drugs, heparin and protamine read through and right",
      lots: "Lot numbers entered",
      incidents: "Incidents and departures from protocol written down",
    }),
    ...grouped("equipment", {
      faults: "Faults of equipment reported, equipment labelled",
      supplies: "Supplies used up are on order",
    }),
  ],
};

const signIn: Checklist = {
  id: "sign-in",
  letter: "1",
  name: "sign in",
  remindAt: "bypass-on",
  source: CITED.surgicalSafety,
  items: grouped("before induction", {
    patient: "Heard who the patient is, what is planned, and consent",
    allergy: "Heard of allergies",
    blood: "Blood loss expected is known, blood and cell salvage ready",
    pump: "Said that the pump is ready, or when it will be",
  }),
};

const timeOut: Checklist = {
  id: "time-out",
  letter: "2",
  name: "time out",
  remindAt: "bypass-on",
  source: CITED.surgicalSafety,
  items: grouped("before incision", {
    names: "Said own name and task",
    patient: "Patient, operation and site said again and agreed",
    antibiotic: "Antibiotic given in time",
    surgeon: "Heard the surgeon's plan: cannulas, cooling, arrest, risks",
    perfusion: "Said the pump's plan: flow, solution, blood, risks",
  }),
};

const signOut: Checklist = {
  id: "sign-out",
  letter: "3",
  name: "sign out",
  remindAt: "closing",
  source: CITED.surgicalSafety,
  items: grouped("before leaving the room", {
    operation: "Operation written down, counts complete, specimens labelled",
    equipment: "Said what went wrong with equipment",
    times: "Said bypass and clamp times and the balance",
    concerns: "Said what matters for the patient's recovery",
  }),
};

export const defaultChecklists: Checklist[] = [
  signIn,
  timeOut,
  beforeBypass,
  beforeComingOff,
  afterBypass,
  signOut,
];

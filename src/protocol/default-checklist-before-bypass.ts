/** The checklist before bypass, along the published categories, in our own words. */
import type { Checklist } from "./checklists.ts";
import { CITED } from "./citations.ts";
import { grouped } from "./default-checklist-items.ts";

export const beforeBypass: Checklist = {
  id: "before-bypass",
  letter: "b",
  name: "before bypass",
  remindAt: "bypass-on",
  source: CITED.beforeBypass,
  items: [
    ...grouped("patient", {
      identity: "Patient and operation match the papers on the pump",
      "blood-group": "Blood group, antibodies and blood in the fridge known",
      allergies: "Allergies known to the pump team",
      size: "Height, weight and planned flow agreed",
    }),
    ...grouped("sterility", {
      packs: "Packs were whole and in date, lots noted",
      "heat-exchanger": "Heat exchanger filled with water and watched for leaks",
    }),
    ...grouped("pump", {
      occlusion: "Occlusion set on every roller in use",
      rollers: "Rollers turn the right way, freely and quietly",
      "flow-meter": "Flow meter faces the right way and reads zero at rest",
      tubing: "Tubing size set on the pump is the one in the pump",
    }),
    ...grouped("electrical", {
      leads: "Leads are in and held fast",
      battery: "Battery charged, change over to it tried",
    }),
    ...grouped("arrest solution", {
      solution: "Arrest solution is the one planned, checked by two",
      "solution-line": "Its line is free of air and tight under pressure",
    }),
    ...grouped("gas", {
      "gas-source": "Gas comes from the right source, hoses tight",
      "gas-flow": "Gas flows, blender and vaporiser set",
      exhaust: "Gas outlet of the oxygenator is open, scavenging on",
    }),
    ...grouped("circuit", {
      air: "Circuit and filter free of air, seen from end to end",
      "way-round": "Lines traced from patient to pump and back, no kinks",
      clamps: "Clamps, shunts and purge lines are where they should be",
      "one-way": "One-way valves point the right way",
    }),
    ...grouped("safety", {
      alarms: "Level, bubble and pressure watches on, and heard",
      vented: "Reservoir vented",
      vents: "Suckers and vent tried in a bowl: they suck",
    }),
    ...grouped("assisted drainage", {
      "vacuum-relief": "Vacuum regulator and both relief valves tried, if used",
    }),
    ...grouped("monitoring", {
      transducers: "Pressure lines zeroed",
      probes: "Temperature probes read true",
      saturations: "Saturation sensors on and matched",
    }),
    ...grouped("anticoagulation", {
      heparin: "Heparin given into a vein, time and dose written down",
      act: "ACT at its target before the first sucker and before bypass",
    }),
    ...grouped("in case of need", {
      cranks: "Hand cranks and torch within reach",
      spares: "Spare oxygenator, pump head and clamps in the room",
    }),
  ],
};

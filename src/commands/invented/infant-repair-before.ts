/** The infant case up to going on bypass: set-up, a prime with red cells, heparin, cannulas. */
import type { Step } from "./script.ts";

export const infantBeforeBypass: readonly Step[] = [
  {
    at: "08:04:00",
    form: {
      kind: "patient",
      number: "P-0031",
      born: "2026-02-12",
      sex: "female",
      weight: 4.1,
      height: 54,
      bloodGroup: "B positive",
      allergies: "none known",
      diagnosis: "interrupted aortic arch with a ventricular septal defect",
      haematocrit: 38,
      haemoglobin: 12.7,
      platelets: 305,
      potassium: 4.6,
      glucose: 5.2,
    },
  },
  {
    at: "08:07:20",
    form: {
      kind: "plan",
      operation: "arch joined, septal defect closed with a patch",
      solution: "one-to-four",
      targetTemperature: 20,
      heparinPerKg: 400,
      targetHaematocrit: 28,
      prime: [
        { fluid: "crystalloid", ml: 120 },
        { fluid: "red-cells", ml: 170 },
        { fluid: "albumin", ml: 40 },
        { fluid: "sodium-bicarbonate", ml: 10 },
      ],
    },
  },
  {
    at: "08:10:00",
    form: {
      kind: "team",
      people: [
        { role: "surgeon", who: "IG" },
        { role: "anaesthetist", who: "CM" },
        { role: "perfusionist", who: "SB" },
        { role: "second perfusionist", who: "KM" },
      ],
    },
  },
  {
    at: "08:14:30",
    form: {
      kind: "circuit",
      components: [
        { component: "oxygenator", size: "newborn", lot: "N-1102", expires: "2026-11" },
        { component: "tubing-pack", size: "3/16 and 1/4 inch", lot: "T-0311", expires: "2027-01" },
        { component: "arterial-cannula", size: "8 Fr", lot: "A-214", expires: "2026-08" },
        { component: "venous-cannula", size: "12 Fr, upper", lot: "C-0907", expires: "2026-12" },
        { component: "second-venous-cannula", size: "14 Fr, lower", lot: "C-0911", expires: "2026-12" },
        { component: "ultrafilter", size: "newborn", lot: "U-0072", expires: "2027-03" },
      ],
    },
  },
  { at: "08:22:00", type: "v120c ; prime, 500 IU heparin in it" },
  { at: "08:23:10", type: "v170r #551902 /KM ; prime" },
  { at: "08:24:00", type: "v40a ; prime" },
  { at: "08:24:30", type: "v10b ; prime" },
  {
    at: "08:32:00",
    form: {
      kind: "gas",
      sample: "arterial",
      values: { ph: 7.36, haematocrit: 30, potassium: 5.1, calcium: 0.92, glucose: 7.7, lactate: 1.9 },
    },
  },
  { at: "08:41:00", type: "m1" },
  { at: "08:44:00", type: "ml on" },
  { at: "08:58:30", type: "m2" },
  { at: "09:05:10", type: "mi" },
  { at: "09:14:00", type: "mh" },
  { at: "09:16:20", type: "a128 ; baseline" },
  { at: "09:33:40", type: "h1600" },
  { at: "09:37:10", type: "a486" },
  { at: "09:39:00", type: "ms" },
  { at: "09:41:20", type: "mn" },
  { at: "09:43:30", type: "mt" },
  { at: "09:46:10", type: "mj" },
];

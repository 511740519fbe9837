/** An invented adult: three coronary grafts, and back on bypass to do one of them again. */
import { adultProtocol } from "../../protocol/adult.ts";
import { coronaryFirstRun } from "./adult-coronary-first-run.ts";
import { coronarySecondRun } from "./adult-coronary-second-run.ts";
import type { Script, Step } from "./script.ts";

const beforeBypass: readonly Step[] = [
  {
    at: "12:42:00",
    form: {
      kind: "patient",
      number: "C-0208",
      ageYears: 64,
      sex: "male",
      weight: 96,
      height: 172,
      bloodGroup: "O positive",
      allergies: "none known",
      diagnosis: "three-vessel coronary disease",
      history: "diabetes on tablets, former smoker",
      haematocrit: 37,
      haemoglobin: 12.4,
      platelets: 264,
      creatinine: 104,
      potassium: 4.4,
      glucose: 8.3,
    },
  },
  {
    at: "12:44:30",
    form: {
      kind: "plan",
      operation: "coronary grafts: mammary artery and two veins",
      solution: "blood-4-1",
      targetTemperature: 34,
      heparinPerKg: 400,
      prime: [{ fluid: "prime", ml: 1400 }],
    },
  },
  {
    at: "12:47:00",
    form: {
      kind: "team",
      people: [
        { role: "surgeon", who: "WH" },
        { role: "anaesthetist", who: "ES" },
        { role: "perfusionist", who: "TJ" },
        { role: "second perfusionist", who: "AN" },
      ],
    },
  },
  {
    at: "12:52:10",
    form: {
      kind: "circuit",
      components: [
        { component: "oxygenator", size: "adult", lot: "X-20418", expires: "2027-05" },
        { component: "arterial-cannula", size: "24 Fr", lot: "A-785", expires: "2027-02" },
        { component: "venous-cannula", size: "two-stage 36/46 Fr", lot: "C-1852", expires: "2026-10" },
        { component: "coronary-sinus-cannula", size: "15 Fr", lot: "R-0417", expires: "2026-09" },
      ],
    },
  },
  { at: "12:55:00", type: "v1.4L f" },
  { at: "13:05:30", type: "m1" },
  { at: "13:12:00", type: "ml" },
  { at: "13:28:30", type: "m2" },
  { at: "13:36:10", type: "mi" },
  { at: "13:49:00", type: "mh" },
  { at: "13:52:15", type: "a131 ; baseline" },
  { at: "14:12:40", type: "h38k" },
  { at: "14:16:50", type: "a455" },
  { at: "14:17:30", type: "h5000" },
  { at: "14:19:00", type: "ms" },
  { at: "14:21:40", type: "a502" },
  { at: "14:23:10", type: "mn" },
  { at: "14:24:30", type: "mt" },
  { at: "14:26:40", type: "mj" },
  { at: "14:28:00", type: "n coronary sinus cannula in, pressure wave seen" },
  { at: "14:30:20", type: "mr" },
  { at: "14:30:50", type: "o400d ; prime run off into a bag" },
];

export const adultCoronary: Script = {
  id: "adult-coronary",
  label: "Adult coronary (invented)",
  protocol: adultProtocol,
  operator: "TJ",
  place: "theatre 1",
  start: { ms: Date.UTC(2026, 2, 11, 11, 40), offset: 60 },
  steps: [...beforeBypass, ...coronaryFirstRun, ...coronarySecondRun],
};

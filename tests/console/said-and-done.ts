// What is said or done in a run, from time out to the handover to intensive care, with the keys that log it.
import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { typed, typedOn } from "../helpers/typed-case.ts";

// What has been logged by the time that it is said.
const SETUP = ["07:10 k weight=80 height=178 prime=1400", "07:20 j perfusionist=AB", "07:25 m l on"];
const HEPARINISED = ["08:40 h 32000", "08:45 a 512", "08:50 m s"];
const ON_BYPASS = ["09:00 b", "09:01 f full", "09:02 l 1000"];
const ARRESTED = ["09:10 x", "09:11 d a", "09:14 d 800", "09:20 w 5 blood gas"];
const WARMING = ["10:00 t 36.5", "10:10 x", "10:11 s flow=4.7 MAP=45 art=37"];
const AFTER = ["10:30 f 0", "10:31 b", "10:32 l 900"];

const setUp = typed(SETUP);
const heparinised = typedOn(setUp, HEPARINISED);
const onBypass = typedOn(heparinised, ON_BYPASS);
const arrested = typedOn(onBypass, ARRESTED);
const warming = typedOn(arrested, WARMING);
const after = typedOn(warming, AFTER);

type Draft<K> = K extends Entry["kind"] ? Partial<Extract<Entry, { kind: K }>> & { kind: K } : never;

export type Said = {
  readonly said: string;
  readonly when: CaseFile;
  /** Each character is a key; a line break is Enter, `↓` the arrow. */
  readonly keys: string;
  /** What the last entry has to be. */
  readonly gives: Draft<Entry["kind"]>;
  /** Free text and forms may be longer. */
  readonly long?: true;
};

const moment = (what: string) => ({ kind: "moment", what }) as const;
const on = (what: string, way?: string) =>
  ({ kind: "span", what, state: "on", ...(way && { way }) }) as const;
const off = (what: string) => ({ kind: "span", what, state: "off" }) as const;
const into = (fluid: string, ml: number) => ({ kind: "volume", direction: "in", fluid, ml }) as const;
const out = (fluid: string, ml: number) => ({ kind: "volume", direction: "out", fluid, ml }) as const;
const returned = (ml: number) => ({ kind: "volume", direction: "returned", ml }) as const;
const drug = (name: string, amount: number, unit: string) => ({ kind: "drug", name, amount, unit }) as const;

const before: readonly Omit<Said, "when">[] = [
  { said: "sign in", keys: "m1\n", gives: moment("sign-in") },
  { said: "time out", keys: "m2\n", gives: moment("time-out") },
  {
    said: "the pump's plan told in the time out",
    keys: "c2↓↓↓↓\n",
    gives: { kind: "check", checklist: "time-out", item: "perfusion", state: "done" },
  },
  {
    said: "patient and papers match",
    keys: "cb\n",
    gives: { kind: "check", checklist: "before-bypass", item: "identity", state: "done" },
  },
  { said: "baseline samples taken", keys: "mb\n", gives: moment("baseline-samples") },
  { said: "baseline ACT 118", keys: "a118\n", gives: { kind: "act", seconds: 118 } },
  { said: "skin", keys: "mi\n", gives: moment("skin-incision") },
  { said: "chest open", keys: "mh\n", gives: moment("chest-open") },
  { said: "tranexamic acid, one gram", keys: "itranex 1\n", gives: drug("tranexamic-acid", 1, "g") },
  { said: "give the heparin", keys: "h32k\n", gives: drug("heparin", 32_000, "[IU]") },
  {
    said: "5000 of heparin into the prime",
    keys: "h5k p\n",
    gives: { kind: "drug", amount: 5000, route: "prime" },
  },
  { said: "200 of albumin into the prime", keys: "v200a\n", gives: into("albumin", 200) },
  { said: "suckers on", keys: "ms\n", gives: on("suckers") },
  {
    said: "oxygenator, lot read off the pack",
    keys: "j\t\t\t\t\t\t\t\t\tX-20417 2027-05;\n",
    gives: { kind: "circuit", components: [{ component: "oxygenator", lot: "X-20417", expires: "2027-05" }] },
    long: true,
  },
];

const goingOn: readonly Omit<Said, "when">[] = [
  { said: "ACT 512", keys: "a512\n", gives: { kind: "act", seconds: 512 } },
  { said: "arterial cannula in", keys: "mn\n", gives: moment("arterial-cannula-in") },
  { said: "line tested", keys: "mt\n", gives: moment("arterial-line-tested") },
  { said: "venous cannula in", keys: "mj\n", gives: moment("venous-cannula-in") },
  { said: "prime displaced", keys: "mr\n", gives: moment("prime-displaced") },
  { said: "400 of it into a bag", keys: "o400d\n", gives: out("discarded", 400) },
  { said: "go on", keys: "b\n", gives: on("bypass") },
];

const running: readonly Omit<Said, "when">[] = [
  { said: "full flow", keys: "ffull\n", gives: { kind: "flow", fraction: 1 } },
  { said: "half flow", keys: "f1/2\n", gives: { kind: "flow", fraction: 0.5 } },
  { said: "down to 4.2", keys: "f4.2\n", gives: { kind: "flow", litresPerMinute: 4.2 } },
  { said: "lungs off", keys: "ml\n", gives: off("ventilation") },
  { said: "vacuum on", keys: "mk\n", gives: on("vacuum") },
  { said: "vent on", keys: "mv\n", gives: on("vent") },
  { said: "cool to 32", keys: "t32\n", gives: { kind: "target", celsius: 32 } },
  { said: "level 1200", keys: "l1200\n", gives: { kind: "level", ml: 1200 } },
  { said: "500 of crystalloid", keys: "v500c\n", gives: into("crystalloid", 500) },
  {
    said: "a unit of red cells, checked by two",
    keys: "v280r #447108 /TJ\n",
    gives: { ...into("red-cells", 280), unitNumber: "447108", checkedBy: "TJ" },
  },
  { said: "urine 80", keys: "u80\n", gives: out("urine", 80) },
  { said: "the bag reads 450", keys: "u=450\n", gives: { kind: "volume", fluid: "urine", bagTotal: 450 } },
  {
    said: "pressure is low: phenylephrine 100",
    keys: "iphenyl 100\n",
    gives: drug("phenylephrine", 100, "ug"),
  },
  { said: "noradrenaline 10", keys: "inora 10\n", gives: drug("noradrenaline", 10, "ug") },
  {
    said: "insulin 4, checked by DV",
    keys: "iins 4 /dv\n",
    gives: { ...drug("insulin", 4, "[IU]"), checkedBy: "DV" },
  },
  { said: "the heart fibrillates", keys: "mq\n", gives: moment("heart-fibrillates") },
  { said: "ultrafiltration on", keys: "muc\n", gives: on("ultrafiltration", "conventional") },
  {
    said: "remind me of a gas in twenty minutes",
    keys: "w20 gas\n",
    gives: { kind: "reminder", text: "gas" },
  },
  { said: "clamp on", keys: "x\n", gives: on("clamp") },
  { said: "partial clamp on", keys: "mx\n", gives: on("partial-clamp") },
  {
    said: "readings: flow, pressure, temperatures",
    keys: "s4.75\n58\n5\n164\n33.6\n35.1;\n",
    gives: { kind: "readings", values: { flow: 4.75, meanPressure: 58, arterialTemperature: 33.6 } },
    long: true,
  },
  {
    said: "gas: pH, pCO2, pO2",
    keys: "g\n7.41\n39\n241;\n",
    gives: { kind: "gas", sample: "arterial", values: { ph: 7.41, carbonDioxide: 39, oxygen: 241 } },
    long: true,
  },
  {
    said: "the sucker is blocked and changed",
    keys: "esucker blocked, changed\n",
    gives: { kind: "incident", text: "sucker blocked, changed" },
    long: true,
  },
  { said: "the relief takes the pump", keys: "ytj\n", gives: { kind: "operator", operator: "TJ" } },
];

const clamped: readonly Omit<Said, "when">[] = [
  { said: "give the arrest dose", keys: "d\n", gives: { kind: "dose", state: "start" } },
  {
    said: "800 by the root",
    keys: "d800a\n",
    gives: { kind: "dose", state: "whole", ml: 800, route: "root" },
  },
  { said: "350 by the left", keys: "d350l\n", gives: { kind: "dose", ml: 350, route: "left-ostium" } },
  { said: "200 by the right", keys: "d200r\n", gives: { kind: "dose", ml: 200, route: "right-ostium" } },
  {
    said: "backwards by the sinus",
    keys: "ds\n",
    gives: { kind: "dose", state: "start", route: "coronary-sinus" },
  },
  { said: "80 down the graft", keys: "d80g\n", gives: { kind: "dose", ml: 80, route: "graft" } },
  { said: "next dose in six minutes", keys: "w6\n", gives: { kind: "reminder", about: "dose" } },
  { said: "the gas is taken", keys: "wok\n", gives: { kind: "reminder-done" } },
  { said: "the gas can wait five minutes", keys: "w+5\n", gives: { kind: "amend" } },
  { said: "ACT 468", keys: "a468\n", gives: { kind: "act", seconds: 468 } },
  { said: "5000 more of heparin", keys: "h5k\n", gives: drug("heparin", 5000, "[IU]") },
  { said: "that was 250 and not 200", keys: "z250\n", gives: { kind: "amend" } },
  { said: "that was two minutes ago", keys: "z@-2\n", gives: { kind: "amend" } },
  { said: "that was typed twice", keys: "z! twice\n", gives: { kind: "void", reason: "twice" } },
  { said: "stop: circulatory arrest", keys: "ma\n", gives: on("circulatory-arrest") },
  { said: "perfuse the head", keys: "mca\n", gives: on("cerebral-perfusion", "antegrade") },
  { said: "rewarm to 36", keys: "t36\n", gives: { kind: "target", celsius: 36 } },
  { said: "clamp off", keys: "x\n", gives: off("clamp") },
];

const weaning: readonly Omit<Said, "when">[] = [
  {
    said: "the outlet is at 37: water turned down",
    keys: "!1 water down\n",
    gives: { kind: "acknowledged", advisory: "outlet-limit" },
  },
  { said: "shock", keys: "mz\n", gives: moment("shock") },
  { said: "it beats", keys: "my\n", gives: moment("heart-beats") },
  { said: "pacing on", keys: "mp\n", gives: on("pacing") },
  { said: "fill the heart", keys: "mf\n", gives: moment("heart-filled") },
  { said: "de-aired", keys: "md\n", gives: moment("heart-de-aired") },
  { said: "calcium 5", keys: "icalcium c 5\n", gives: drug("calcium-chloride", 5, "mmol") },
  {
    said: "lungs ventilated, ticked before coming off",
    keys: "co\n",
    gives: { kind: "check", checklist: "before-coming-off", item: "ventilated", state: "done" },
  },
  { said: "three quarters", keys: "f3/4\n", gives: { kind: "flow", fraction: 0.75 } },
  { said: "come off", keys: "b\n", gives: off("bypass") },
];

const afterwards: readonly Omit<Said, "when">[] = [
  { said: "give a hundred", keys: "r100\n", gives: returned(100) },
  { said: "800 left", keys: "l800\n", gives: { kind: "level", ml: 800 } },
  { said: "trial dose of protamine", keys: "p20\n", gives: drug("protamine", 20, "mg") },
  { said: "protamine 300", keys: "p300\n", gives: drug("protamine", 300, "mg") },
  { said: "suckers off", keys: "ms\n", gives: off("suckers") },
  { said: "venous line out", keys: "mo\n", gives: moment("venous-line-out") },
  { said: "cannulas out", keys: "me\n", gives: moment("cannulas-out") },
  { said: "back on", keys: "b\n", gives: on("bypass") },
  { said: "400 to the cell salvage", keys: "o400c\n", gives: out("to-cell-salvage", 400) },
  { said: "150 thrown away", keys: "o150d\n", gives: out("discarded", 150) },
  { said: "220 of washed cells", keys: "v220s\n", gives: into("salvaged-cells", 220) },
  { said: "ACT 124", keys: "a124\n", gives: { kind: "act", seconds: 124 } },
  { said: "sign out", keys: "m3\n", gives: moment("sign-out") },
  {
    said: "the balance is told in the sign out",
    keys: "c3↓↓\n",
    gives: { kind: "check", checklist: "sign-out", item: "times", state: "done" },
  },
  { said: "chest closed", keys: "mw\n", gives: moment("chest-closed") },
  {
    said: "handed to intensive care",
    keys: "nhanded to intensive care\n",
    gives: { kind: "note", text: "handed to intensive care" },
    long: true,
  },
  { said: "the record is signed and closed", keys: ".ab\n", gives: { kind: "closed", operator: "AB" } },
];

const during = (when: CaseFile, all: readonly Omit<Said, "when">[]): Said[] =>
  all.map((one) => ({ ...one, when }));

export const SAID_AND_DONE: readonly Said[] = [
  ...during(setUp, before),
  ...during(heparinised, goingOn),
  ...during(onBypass, running),
  ...during(arrested, clamped),
  ...during(warming, weaning),
  ...during(after, afterwards),
];

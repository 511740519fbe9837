// What a perfusionist sees, as views: the screens of a run from its first minute to its last, and those around it.

import { reviewApp, updateApp } from "../../src/console/app.ts";
import { type Key, keysOf } from "../../src/console/key.ts";
import { type Model, openModel } from "../../src/console/model.ts";
import { type CaseLine, openStart, type Start } from "../../src/console/start.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { View } from "../../src/screens/Root.tsx";
import { ESCAPE, press, UP } from "../helpers/console-keys.ts";
import { at, given, openedCase, typedOn } from "../helpers/typed-case.ts";
import { HOME, quietView, runView, viewOf } from "./frame.ts";

/** Set up as far as the forms go: a patient of 80 kg, and the plan. */
const SET_UP = given(
  given(
    openedCase(),
    {
      kind: "patient",
      number: "A-0001",
      weight: 80,
      height: 178,
      allergies: "latex",
      haematocrit: 38,
    },
    "07:05",
  ),
  { kind: "plan", operation: "aortic valve replacement", solution: "blood-4-1" },
  "07:10",
);

const BEFORE = typedOn(SET_UP, ["07:20 v1300f", "07:40 a124", "08:01 h32000", "08:06 a512"]);

const ON_BYPASS = typedOn(BEFORE, ["08:15 b", "08:15:30 ffull", "08:16 t32", "08:20 l1150", "08:22 u=120"]);

const DOSE_RUNNING = typedOn(ON_BYPASS, ["08:26 x", "08:26:20 da", "08:27:30 d350+", "08:28 ms"]);

const ARRESTED = typedOn(DOSE_RUNNING, [
  "08:29 d600",
  "08:31 v500c ; pressure low",
  "08:45 a468",
  "08:46 w15 blood gas",
]);

const AFTER = typedOn(ARRESTED, [
  ...["08:47 h5000", "08:52 a530", "08:55 d250 l", "09:10 x", "09:11 mz", "09:30 f1/2"],
  ...["09:36 b", "09:37 l900", "09:40 r200", "09:45 p330", "09:50 a128", "09:55 u=410", "10:00 o300c"],
]);

const CORRECTED = typedOn(ARRESTED, [
  "08:48 u80",
  "08:49 z! wrong bag",
  "08:50 z#11 1050",
  "08:58 v250a @08:33",
]);

const line = (file: CaseFile, keys: string, clock: string): View =>
  runView(press(openModel(file), keys, at(clock)), at(clock));

const keyed = (file: CaseFile, keys: readonly (string | Key)[], clock: string): View =>
  runView(
    keys.reduce<Model>(
      (model, key) => press(model, typeof key === "string" ? key : [key], at(clock)),
      openModel(file),
    ),
    at(clock),
  );

const notSaved = (file: CaseFile): View =>
  runView(
    { ...openModel(file), saved: file.entries.length - 2, trouble: "the disk is full" },
    at("08:46:30"),
  );

const saving = (file: CaseFile): View =>
  runView({ ...openModel(file), saved: file.entries.length - 1 }, at("08:46:30"));

const start = (changes: Partial<Start>): View =>
  viewOf(
    { screen: "start", start: { ...openStart(HOME.protocols), cases: [], ...changes }, home: HOME },
    at("07:00"),
  );

const CASES: readonly CaseLine[] = [
  {
    path: "/cases/case-20260304-abcdef.json",
    id: "20260304-abcdef",
    label: "valve 2",
    opened: "2026-03-04T07:00:00.000+01:00",
    entries: 37,
    state: "open",
    operation: "aortic valve replacement",
  },
  {
    path: "/cases/case-20260303-bcdefg.json",
    id: "20260303-bcdefg",
    fault: "entry 12 is cut short: the file ends in the middle of a value.",
  },
  {
    path: "/cases/case-20260302-cdefgh.json",
    id: "20260302-cdefgh",
    label: "20260302-cdefgh",
    opened: "2026-03-02T12:30:00.000+01:00",
    entries: 104,
    state: "closed",
  },
  {
    path: "/cases/case-20260301-defghi.json",
    id: "20260301-defghi",
    label: "infant 4",
    opened: "2026-03-01T08:00:00.000+01:00",
    entries: 88,
    state: "open",
    damage:
      "The file of this case is damaged: it was recovered up to entry 88 (10:02:00). Look at what follows it.",
  },
];

const review = (file: CaseFile, keys: string): View => {
  const first = reviewApp([file, SET_UP], HOME).app;
  const app = keysOf(keys).reduce((before, key) => updateApp(before, key, at("12:00")).app, first);
  return viewOf(app, at("12:00"));
};

/** With readings and a gas, so that there is something to work out. */
const MEASURED = typedOn(ARRESTED, [
  "08:30 s flow=4.6 MAP=48 CVP=4 art=31.8 ven=30.2 SvO2=78",
  "08:40 g pCO2=39 pO2=210 sat=99.5 Hb=7.9 K=4.6 glu=8.1 lac=1.2",
  "08:45 s flow=4.7 MAP=47 CVP=4 art=32 ven=31.6 SvO2=77",
]);

/** Every situation by its name; all of them are drawn at the usual and at the large size. */
export const SITUATIONS: Readonly<Record<string, View>> = {
  "run before": quietView(BEFORE, at("08:10")),
  "run on bypass": quietView(ON_BYPASS, at("08:25:07")),
  "run arrested, dose running": quietView(DOSE_RUNNING, at("08:28:12")),
  "run arrested": quietView(ARRESTED, at("08:46:30")),
  "run arrested, dose overdue": quietView(ARRESTED, at("08:51:05")),
  "run after": quietView(AFTER, at("10:05")),
  "run with entries put right": quietView(CORRECTED, at("08:59")),
  "run saving": saving(ARRESTED),
  "run not saved": notSaved(ARRESTED),
  "line open, nothing typed": line(ARRESTED, "h", "08:50"),
  "line open, an entry meant": line(ARRESTED, "d300 r @-2 ; warm", "08:50"),
  "line open, refused": line(ARRESTED, "t99\n", "08:50"),
  "line open, choices": line(ARRESTED, "m", "08:50"),
  "line set aside": keyed(ARRESTED, ["v250", ESCAPE], "08:50"),
  "put right, another picked": keyed(ARRESTED, ["z", UP, UP, UP], "08:50"),
  find: line(ARRESTED, "/o", "08:50"),
  help: line(ARRESTED, "?", "08:50"),
  leave: line(ARRESTED, "q", "08:50"),
  "leave while unsaved": runView(press({ ...openModel(ARRESTED), saved: 3 }, "q", at("08:50")), at("08:50")),
  "form, readings": line(MEASURED, "s4.5\n6", "08:50"),
  "form, patient and plan": line(BEFORE, "k\nf\n71\n", "08:05"),
  checklists: line(BEFORE, "cb  n", "08:05"),
  "hand over": line(MEASURED, "yTJ", "08:50"),
  closing: line(AFTER, ".", "10:05"),
  advice: line(MEASURED, "!", "08:50"),
  "run advised": quietView(MEASURED, at("08:50")),
  live: line(MEASURED, "\t", "08:50"),
  trends: line(MEASURED, "\t\t", "08:50"),
  balances: line(AFTER, "\t\t\t", "10:05"),
  quality: line(MEASURED, "\t\t\t\t", "08:50"),
  spans: line(AFTER, "\t\t\t\t\t", "10:05"),
  "clock early": runView(
    { ...openModel(ARRESTED), mode: { name: "clock-early", byMs: 754_000 } },
    at("08:30"),
  ),
  "start, nothing saved": start({}),
  "start, reading": start({ cases: null }),
  "start, cases": start({ cases: CASES, chosen: 1, notice: "This case cannot be opened: it is cut short." }),
  "start, asking": start({ asking: { text: "km valve 2", cursor: 10, protocol: "adult" } }),
  "review, top": review(AFTER, ""),
  "review, timeline": review(AFTER, "\t"),
};

/** Those that are drawn in a terminal that is too small as well. */
export const SMALL: readonly string[] = [
  "run before",
  "run arrested, dose running",
  "run not saved",
  "line open, an entry meant",
  "line open, refused",
  "start, cases",
  "review, top",
];

/** The arrest solutions of the shipped protocols, named by their parts and by no maker. */
import type { DoseRoute, PlannedDose, Solution } from "./arrest.ts";
import { CITED } from "./citations.ts";
import { COMMON_PRACTICE, FROM_MEMORY } from "./decision.ts";

type Doses = { first: PlannedDose; repeat: PlannedDose };

/** A fixed volume in mL. */
export const fixed = (ml: number): PlannedDose => ({ fixed: { value: ml, source: FROM_MEMORY } });

/** So many mL/kg, with or without a ceiling in mL. */
export const perKg = (mlPerKg: number, ceiling?: number): PlannedDose => ({
  perKg: { value: mlPerKg, source: FROM_MEMORY },
  ...(ceiling === undefined ? {} : { ceiling: { value: ceiling, source: FROM_MEMORY } }),
});

const mostlyBlood = (id: string, blood: number, doses: Doses): Solution => ({
  id,
  name: `${blood}:1 blood to crystalloid`,
  blood,
  crystalloid: 1,
  ratioSource: COMMON_PRACTICE,
  ...doses,
  interval: { value: 20, source: COMMON_PRACTICE },
});

/** The four solutions, with the doses a unit plans for the two that are mostly blood. */
export const defaultSolutions = (bloodDoses: Doses): Solution[] => [
  mostlyBlood("blood-4-1", 4, bloodDoses),
  mostlyBlood("blood-8-1", 8, bloodDoses),
  {
    id: "one-to-four",
    name: "1:4 blood to crystalloid",
    blood: 1,
    crystalloid: 4,
    ratioSource: CITED.oneToFour,
    first: perKg(20, 1000),
    repeat: perKg(10, 500),
    interval: { value: 90, source: CITED.oneToFourInterval },
  },
  {
    id: "crystalloid",
    name: "crystalloid alone, one dose",
    blood: 0,
    crystalloid: 1,
    ratioSource: "computed from the name: no blood in it",
    first: perKg(20, 2000),
  },
];

type Pressures = Partial<Record<DoseRoute["id"], DoseRoute["pressure"]>>;

/** Every route, with the pressure a unit wants there where it has one in mind. */
export const defaultRoutes = (pressures: Pressures = {}): DoseRoute[] =>
  (Object.keys(ROUTE_NAMES) as DoseRoute["id"][]).map((id) => {
    const pressure = pressures[id];
    return { id, name: ROUTE_NAMES[id], ...(pressure && { pressure }) };
  });

const ROUTE_NAMES: Readonly<Record<DoseRoute["id"], string>> = {
  root: "aortic root",
  "left-ostium": "left ostium",
  "right-ostium": "right ostium",
  "coronary-sinus": "coronary sinus",
  graft: "graft",
};

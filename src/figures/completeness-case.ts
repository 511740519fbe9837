/** Completeness of what is known before the run: patient, operation, people, equipment, disposables. */
import { componentName } from "../protocol/names.ts";
import { lastOf, ofKind } from "../record/standing.ts";
import { grouped, type Item, present, presentIf, standard, wasOn } from "./completeness-item.ts";
import type { Course } from "./run.ts";
import { sumOf } from "./volumes.ts";

/** Each item as present, missing or not applicable, in the order of the list. */
export const completenessOfCase = (course: Course): Item[] => [
  ...patientItems(course),
  ...operationItems(course),
  ...circuitItems(course),
];

function patientItems({ patient, plan }: Course): Item[] {
  const told = (...values: readonly unknown[]) =>
    present(values.some((value) => value !== undefined && value !== ""));
  const all = (...values: readonly unknown[]) => present(values.every((value) => value !== undefined));
  return grouped("patient", standard(3), [
    ["number or name of the patient", told(patient.number, patient.name)],
    ["date of birth or age", told(patient.born, patient.ageYears)],
    ["sex", told(patient.sex)],
    ["height and weight, for the body surface", all(patient.height, patient.weight)],
    ["blood group", told(patient.bloodGroup)],
    ["allergies", told(patient.allergies)],
    ["infection status", told(patient.infection)],
    ["haemoglobin or haematocrit before the operation", told(patient.haemoglobin, patient.haematocrit)],
    ["platelets before the operation", told(patient.platelets)],
    [
      "sodium, potassium, creatinine and glucose before the operation",
      all(patient.sodium, patient.potassium, patient.creatinine, patient.glucose),
    ],
    ["diagnosis or history", told(patient.diagnosis, patient.history)],
    ["operation planned", told(plan.operation)],
  ]);
}

function operationItems({ record }: Course): Item[] {
  const people = lastOf(record.facts, "team")?.entry.people ?? [];
  const someone = (role: RegExp) => present(people.some((one) => role.test(one.role) && one.who !== ""));
  const place = ofKind(record.facts, "opened").some(({ entry }) => (entry.place ?? "") !== "");
  return grouped("operation", standard(3), [
    ["room", present(place)],
    ["surgeon", someone(/surg/i)],
    ["anaesthetist", someone(/ana?esth/i)],
    ["perfusionist", someone(/perfusion/i)],
    ["nurse", someone(/nurse/i)],
  ]);
}

/** Components whose lot is always asked for, and those that may be built into another one. */
const ALWAYS = ["oxygenator", "tubing-pack", "arterial-cannula", "venous-cannula"];
const WHERE_SEPARATE = ["reservoir", "arterial-filter"];

function circuitItems(course: Course): Item[] {
  const components = lastOf(course.record.facts, "circuit")?.entry.components ?? [];
  const named = (id: string) => componentName(id, course.protocol);
  const noted = (id: string) => components.some(({ component }) => component === id);
  const withLot = (id: string) =>
    components.some(({ component, lot }) => component === id && lot !== undefined);
  const salvaged = sumOf(course.volumes, ({ fluid }) => /salvage/.test(fluid)) !== null;
  const dosed = course.doses.length > 0;
  return [
    ...grouped("equipment", standard(3), [
      ["heart-lung machine", present(noted("heart-lung-machine"))],
      ["heater-cooler", present(noted("heater-cooler"))],
      ["cell salvage machine", presentIf(salvaged || noted("cell-salvage"), noted("cell-salvage"))],
    ]),
    ...grouped("disposables", standard(3), [
      ...ALWAYS.map((id) => [`${named(id)} with its lot`, present(withLot(id))] as const),
      ...WHERE_SEPARATE.map(
        (id) => [`${named(id)} with its lot, where separate`, presentIf(noted(id), withLot(id))] as const,
      ),
      ["arrest solution set with its lot", presentIf(dosed, withLot("arrest-solution-set"))],
      ["ultrafilter with its lot", presentIf(wasOn(course, "ultrafiltration"), withLot("ultrafilter"))],
      ["vent with its lot", presentIf(wasOn(course, "vent"), withLot("vent"))],
    ]),
  ];
}

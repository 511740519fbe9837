/** Who and what with: the patient by a local number, those who signed entries, the components, and this program. */
import { componentName } from "../protocol/names.ts";
import type { EntryOf } from "../record/entry.ts";
import { ofKind } from "../record/standing.ts";
import { type FhirCase, notes, personPart, SUBJECT } from "./fhir-case.ts";
import { concept, filled, textOf } from "./fhir-parts.ts";
import type { Made, Resource } from "./fhir-types.ts";

export const PROGRAM = "program";

/** The patient: a local number and the sex, nothing else that says who it is. */
export function patientResource(of: FhirCase): Resource {
  const { number, sex } = of.run.course.patient;
  const value = textOf(number);
  const identifier = { use: "usual", type: { text: "local patient number" }, value };
  return filled({
    resourceType: "Patient",
    id: of.id(SUBJECT),
    identifier: value === undefined ? [] : [identifier],
    gender: sex ?? "unknown",
  });
}

/** Everybody who signed an entry, by the initials. */
export const people = (of: FhirCase): Resource[] =>
  initialsIn(of).map((initials) => ({
    resourceType: "Practitioner",
    id: of.id(personPart(initials)),
    identifier: [{ type: { text: "initials in the local record" }, value: textOf(initials) }],
  }));

/** The initials of everybody who signed an entry, each once. */
export const initialsIn = ({ file }: FhirCase): string[] => [
  ...new Set(file.entries.map(({ by }) => by).filter((by) => textOf(by) !== undefined)),
];

/** This program, which made the figures. */
export const program = (of: FhirCase): Resource => ({
  resourceType: "Device",
  id: of.id(PROGRAM),
  deviceName: [{ name: "pumpside", type: "other" }],
  type: concept("program that keeps the record of a bypass run"),
  note: [{ text: "A record and a calculator: not a monitor, not a medical device." }],
});

type Component = EntryOf<"circuit">["components"][number];

/** The components of the circuit as last told, a device each. */
export function components(of: FhirCase): Made[] {
  const told = ofKind(of.run.course.record.facts, "circuit").at(-1);
  return (told?.entry.components ?? []).map((component, i) => ({
    resource: deviceOf(of, component, componentPart(i)),
    from: [told?.entry.id ?? ""],
  }));
}

export const componentPart = (index: number): string => `component/${index}`;

function deviceOf(of: FhirCase, { component, size, lot, expires }: Component, part: string): Resource {
  const name = componentName(component, of.file.protocol);
  const date = dateOf(expires);
  return filled({
    resourceType: "Device",
    id: of.id(part),
    type: concept(name),
    lotNumber: textOf(lot),
    expirationDate: date,
    note: notes(size && `size ${size}`, date === undefined && expires ? `expires ${expires}` : undefined),
  });
}

const DATE = /^\d{4}-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?$/;

/** A day or a month as FHIR takes it; what people wrote in another way stays a note. */
const dateOf = (text: string | undefined): string | undefined =>
  text !== undefined && DATE.test(text) ? text : undefined;

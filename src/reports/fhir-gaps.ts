/** What the protocol asks for on bypass and nobody ever recorded: a gap is told as one. */
import { GAS_VALUES, type GasName, READINGS, type ReadingName } from "../record/quantities.ts";
import { ofKind } from "../record/standing.ts";
import { type FhirCase, SUBJECT } from "./fhir-case.ts";
import { GAS_CODES, READING_CODES, type SeenCode } from "./fhir-codes.ts";
import { absent, concept, filled } from "./fhir-parts.ts";
import type { Made } from "./fhir-types.ts";

/** An observation without a value for each; none before bypass was ever on. */
export function gaps(of: FhirCase): Made[] {
  const { facts } = of.run.course.record;
  const bypass = of.run.course.spans.get("bypass")?.[0];
  if (bypass === undefined) return [];
  const readings = new Set(ofKind(facts, "readings").flatMap(({ entry }) => Object.keys(entry.values)));
  const gases = new Set(ofKind(facts, "gas").flatMap(({ entry }) => Object.keys(entry.values)));
  const { readingFields, gasFields } = of.file.protocol;
  const gap = (part: string, name: string, code: SeenCode | undefined) =>
    gapOf(of, part, name, code, bypass.from);
  return [
    ...readingFields
      .filter((field): field is ReadingName => Object.hasOwn(READINGS, field) && !readings.has(field))
      .map((field) => gap(`gap/reading/${field}`, READINGS[field].name, READING_CODES[field])),
    ...gasFields
      .filter((field): field is GasName => Object.hasOwn(GAS_VALUES, field) && !gases.has(field))
      .map((field) => gap(`gap/gas/${field}`, GAS_VALUES[field].name, GAS_CODES[field])),
  ];
}

function gapOf(of: FhirCase, part: string, name: string, code: SeenCode | undefined, from: number): Made {
  const resource = filled({
    resourceType: "Observation",
    id: of.id(part),
    status: of.isFinal ? "final" : "preliminary",
    code: concept(name, code),
    subject: of.reference(SUBJECT),
    effectivePeriod: of.period(from, Math.max(from, of.run.now)),
    dataAbsentReason: absent("asked for by the protocol, never recorded"),
  });
  return { resource, from: [] };
}

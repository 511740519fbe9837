/** What was observed: readings, gases, ACT, the patient before the run, volumes and levels, a value each. */

import { unitText } from "../format/unit.ts";
import { fluidName } from "../protocol/names.ts";
import type { Entry, EntryOf } from "../record/entry.ts";
import { GAS_VALUES, type GasName, type Quantity, READINGS, type ReadingName } from "../record/quantities.ts";
import { type Fact, ofKind } from "../record/standing.ts";
import { type FhirCase, happened, notes, ofFact, standingOf, whoWrote } from "./fhir-case.ts";
import { ACT_CODE, GAS_CODES, PATIENT_CODES, READING_CODES, type SeenCode } from "./fhir-codes.ts";
import { absent, concept, filled, quantity } from "./fhir-parts.ts";
import type { Made } from "./fhir-types.ts";

/** Where an observed value is kept in the document. */
export const valuePart = (entry: string, value: string): string => `${entry}/${value}`;

type Observed = {
  readonly part: string;
  readonly name: string;
  readonly code?: SeenCode | undefined;
  readonly unit: string;
  /** `null` where nobody said how much. */
  readonly value: number | null;
  readonly category?: "vital-signs" | "laboratory" | undefined;
  readonly method?: string | undefined;
  readonly notes?: readonly (string | undefined)[];
};

/** Everything that was observed, with what was struck out, marked as an error. */
export const observations = (of: FhirCase): Made[] => [
  ...ofKind(of.run.course.record.facts, "patient").flatMap((fact) => told(of, fact)),
  ...of.run.course.record.written
    .toSorted((a, b) => a.at - b.at || a.entry.seq - b.entry.seq)
    .flatMap((fact) => observedIn(of, fact).map((observed) => observation(of, fact, observed))),
];

function observedIn(of: FhirCase, fact: Fact): Observed[] {
  const { entry } = fact;
  if (entry.kind === "readings") return valuesIn(entry.id, entry.values, READINGS, reading);
  if (entry.kind === "gas") return valuesIn(entry.id, entry.values, GAS_VALUES, gasIn(entry));
  if (entry.kind === "act")
    return [observedAs(entry, "activated clotting time", "s", entry.seconds, ACT_CODE, "laboratory")];
  if (entry.kind === "level")
    return [observedAs(entry, "level in the reservoir or the pump", "mL", entry.ml)];
  return entry.kind === "volume" ? [volumeIn(of, entry)] : [];
}

const observedAs = (
  { id }: Entry,
  name: string,
  unit: string,
  value: number | null,
  code?: SeenCode,
  category?: Observed["category"],
): Observed => ({ part: id, name, unit, value, code, category });

type Named = Pick<Observed, "name" | "code" | "category" | "method">;

function valuesIn<N extends string>(
  entry: string,
  values: { readonly [name: string]: unknown },
  table: Readonly<Record<N, Quantity>>,
  named: (key: N, quantity: Quantity) => Named,
): Observed[] {
  return (Object.keys(table) as N[]).flatMap((key) => {
    const value = values[key];
    if (typeof value !== "number") return [];
    return [{ part: valuePart(entry, key), unit: table[key].unit, value, ...named(key, table[key]) }];
  });
}

const reading = (key: ReadingName, { name }: Quantity): Named => ({ name, code: READING_CODES[key] });

const gasIn =
  ({ sample, convention }: EntryOf<"gas">) =>
  (key: GasName, { name }: Quantity): Named => ({
    name: `${sample} ${name}`,
    code: GAS_CODES[key],
    category: "laboratory",
    method: convention,
  });

const WAYS = { in: "fluid in", out: "volume out", returned: "returned to the patient" } as const;

/** A volume; where the bag was read it is what the bag gained. */
function volumeIn(of: FhirCase, entry: EntryOf<"volume">): Observed {
  const { direction, fluid, ml, bagTotal, unitNumber, checkedBy } = entry;
  const read = of.run.course.volumes.find(({ fact }) => fact.entry.id === entry.id);
  const name = fluidName(direction, fluid, of.file.protocol);
  return {
    ...observedAs(
      entry,
      name ? `${WAYS[direction]}: ${name}` : WAYS[direction],
      "mL",
      read?.ml ?? ml ?? null,
    ),
    method: bagTotal === undefined ? undefined : `bag reads ${bagTotal} mL, less the urine before it`,
    notes: [unitNumber && `unit ${unitNumber}`, checkedBy && `checked by ${checkedBy}`],
  };
}

const PATIENT_VALUES: readonly (readonly [field: string, name: string, unit: string])[] = [
  ["weight", "body weight", "kg"],
  ["height", "body height", "cm"],
  ["haemoglobin", "haemoglobin before the run", "g/dL"],
  ["haematocrit", "haematocrit before the run", "%"],
  ["platelets", "platelets before the run", "10*9/L"],
  ["creatinine", "creatinine before the run", "umol/L"],
  ["sodium", "sodium before the run", "mmol/L"],
  ["potassium", "potassium before the run", "mmol/L"],
  ["glucose", "glucose before the run", "mmol/L"],
];

function told(of: FhirCase, fact: Fact<EntryOf<"patient">>): Made[] {
  return PATIENT_VALUES.flatMap(([field, name, unit]) => {
    const value = fact.entry[field];
    if (typeof value !== "number") return [];
    const part = valuePart(fact.entry.id, field);
    return [observation(of, fact, { part, name, unit, value, code: PATIENT_CODES[field] })];
  });
}

function observation(of: FhirCase, fact: Fact, observed: Observed): Made {
  const { part, name, code, unit, value, category, method } = observed;
  const { entry } = fact;
  const by = whoWrote(of, entry);
  const base = ofFact(of, fact, part);
  const resource = filled({
    resourceType: "Observation",
    ...base,
    status: standingOf(fact, "final", "corrected"),
    category: category && [categoryOf(category)],
    code: concept(name, code),
    effectiveDateTime: happened(of, fact),
    performer: by ? [by] : [],
    valueQuantity: value === null ? undefined : quantity(value, unit),
    dataAbsentReason: value === null ? absent(`no ${unitText(unit)} recorded`) : undefined,
    method: method === undefined ? undefined : concept(method),
    note: [...base.note, ...notes(...(observed.notes ?? []))],
  });
  return { resource, from: [entry.id] };
}

const categoryOf = (code: string) => ({
  coding: [{ system: "http://terminology.hl7.org/CodeSystem/observation-category", code }],
});

/** What was given: arrest solution, heparin, protamine and other drugs, each dose a MedicationAdministration. */
import type { Dose } from "../figures/doses.ts";
import { ROUTE_NAMES } from "../figures/entry-words.ts";
import { drugName } from "../protocol/names.ts";
import type { EntryOf } from "../record/entry.ts";
import type { Fact } from "../record/standing.ts";
import { type FhirCase, happened, notes, ofFact, performers, standingOf } from "./fhir-case.ts";
import { concept, filled, quantity, textOf } from "./fhir-parts.ts";
import { within } from "./fhir-spans.ts";
import type { Made } from "./fhir-types.ts";

/** What arrest solution is filed under, apart from the solution's own name: the sum of these is the balance. */
export const ARREST_SOLUTION = "arrest solution";

/** Every dose of arrest solution, then every drug in the order of writing. */
export const medicationsGiven = (of: FhirCase): Made[] => [
  ...of.run.course.doses.map((dose) => doseGiven(of, dose)),
  ...of.run.course.record.written
    .filter((fact): fact is Fact<EntryOf<"drug">> => fact.entry.kind === "drug")
    .map((fact) => drugGiven(of, fact)),
];

/** A dose of arrest solution; while nobody has said how much, a note says so in the place of an amount. */
function doseGiven(of: FhirCase, { start, end, ml, route, solution, first, last }: Dose): Made {
  const { pressure, temperature } = last.entry;
  const way = route && concept(ROUTE_NAMES[route]);
  const { note } = ofFact(of, last);
  const resource = filled({
    resourceType: "MedicationAdministration",
    ...ofFact(of, first),
    status: end === null ? "in-progress" : "completed",
    category: concept(ARREST_SOLUTION),
    medicationCodeableConcept: concept(solution?.name ?? ARREST_SOLUTION),
    effectivePeriod: of.period(start, end),
    performer: performers(of, first.entry),
    partOf: within(of, "clamp", start),
    dosage: ml === null ? undefined : filled({ route: way, dose: quantity(ml, "mL") }),
    note: [
      ...note,
      ...notes(
        ml === null ? "volume not recorded" : undefined,
        pressure === undefined ? undefined : `pressure ${pressure} mmHg`,
        temperature === undefined ? undefined : `temperature ${temperature} °C`,
      ),
    ],
  });
  return { resource, from: entriesOf(of, first, last) };
}

/** The entries of a dose, from the first to the last of them. */
function entriesOf({ run }: FhirCase, first: Fact<EntryOf<"dose">>, last: Fact<EntryOf<"dose">>): string[] {
  const doses = run.course.record.facts.filter(({ entry }) => entry.kind === "dose");
  return doses.slice(doses.indexOf(first), doses.indexOf(last) + 1).map(({ entry }) => entry.id);
}

/** A drug; one that was struck out stays in the document, marked as an error. */
function drugGiven(of: FhirCase, fact: Fact<EntryOf<"drug">>): Made {
  const { entry } = fact;
  const { name, amount, unit, route, checkedBy } = entry;
  const base = ofFact(of, fact);
  const resource = filled({
    resourceType: "MedicationAdministration",
    ...base,
    status: standingOf(fact, "completed", "completed"),
    medicationCodeableConcept: concept(drugName(name, of.file.protocol)),
    effectiveDateTime: happened(of, fact),
    performer: performers(of, entry),
    dosage: filled({ route: textOf(route) && concept(route ?? ""), dose: quantity(amount, unit) }),
    note: [...base.note, ...notes(checkedBy && `checked by ${checkedBy}`)],
  });
  return { resource, from: [entry.id] };
}

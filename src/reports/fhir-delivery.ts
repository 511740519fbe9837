/** Oxygen delivery as it held over the run, each stretch with the readings and the gas that it follows from. */
import type { Held } from "../figures/below-threshold.ts";
import {
  arterialSaturationSeries,
  gasSeries,
  haemoglobinSeries,
  type Measured,
  readingSeries,
} from "../figures/measured.ts";
import { deliveryOverTime } from "../figures/oxygen-over-time.ts";
import { fixed, plain } from "../format/number.ts";
import { type FhirCase, SUBJECT } from "./fhir-case.ts";
import { valuePart } from "./fhir-observed.ts";
import { concept, filled, quantity } from "./fhir-parts.ts";
import { PROGRAM } from "./fhir-people.ts";
import type { Made } from "./fhir-types.ts";

type Delivery = Held & { readonly part: string };

/** The stretches up to the document's moment, in the order of time. */
export const deliveries = ({ run }: FhirCase): Delivery[] =>
  deliveryOverTime(run.course)
    .filter(({ from }) => from <= run.now)
    .map((held) => ({ ...held, to: Math.min(held.to, run.now), part: `delivery/${held.from}` }));

/** An Observation for each stretch, in mL/min/m². */
export const deliveriesOverTime = (of: FhirCase): Made[] =>
  deliveries(of).map((delivery) => ({ resource: deliveryOf(of, delivery), from: [] }));

function deliveryOf(of: FhirCase, { from, to, value, part }: Delivery) {
  const parts = partsAt(of, from);
  return filled({
    resourceType: "Observation",
    id: of.id(part),
    status: of.isFinal ? "final" : "preliminary",
    code: concept("oxygen delivery index"),
    subject: of.reference(SUBJECT),
    effectivePeriod: of.period(from, to),
    valueQuantity: quantity(value, "mL/min/m2"),
    method: concept(methodOf(of, parts)),
    device: of.reference(PROGRAM),
    derivedFrom: parts.map(({ fact, field }) => of.reference(valuePart(fact.entry.id, field))),
  });
}

type Part = Measured & { readonly field: string };

/** What held at a moment: flow, haemoglobin, arterial saturation, arterial pO2. */
function partsAt({ run: { course } }: FhirCase, moment: number): Part[] {
  const series: readonly (readonly [field: string, values: readonly Measured[]])[] = [
    ["flow", readingSeries(course, "flow")],
    ["haemoglobin", haemoglobinSeries(course)],
    ["saturation", arterialSaturationSeries(course)],
    ["oxygen", gasSeries(course, "oxygen", "arterial")],
  ];
  return series.flatMap(([field, values]) => {
    const last = values.findLast(({ at }) => at <= moment);
    return last ? [{ ...last, field }] : [];
  });
}

/** The formula with the numbers put in, and the constants with their sources. */
function methodOf({ file: { protocol } }: FhirCase, parts: readonly Part[]): string {
  const { perGram, dissolved } = protocol.oxygen;
  const values = parts.map(({ name, value }) => `${name} ${fixed(value, value < 20 ? 2 : 0)}`).join(", ");
  const sources = [perGram.source, dissolved.source].filter(Boolean).join("; ");
  return `(${plain(perGram.value)} × Hb × saturation + ${plain(dissolved.value)} × pO2) × flow / body surface × 10: ${values} (${sources})`;
}

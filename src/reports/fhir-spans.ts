/** What was on and off, as procedures: bypass, clamp, circulatory arrest and the rest, each interval one. */

import { type Interval, intervalsOf, isOnAt, type Spans } from "../figures/spans.ts";
import { lookUp } from "../format/look-up.ts";
import { spanName, wayName } from "../protocol/names.ts";
import { type FhirCase, ofFact, performers } from "./fhir-case.ts";
import { SPAN_CODES } from "./fhir-codes.ts";
import { concept, filled } from "./fhir-parts.ts";
import { componentPart } from "./fhir-people.ts";
import type { Made, Reference } from "./fhir-types.ts";

/** Every interval of every span, bypass first. */
export const procedures = (of: FhirCase, componentCount: number): Made[] =>
  [...of.run.course.spans.values()]
    .flat()
    .sort((a, b) => Number(b.what === "bypass") - Number(a.what === "bypass") || a.from - b.from)
    .map((interval) => procedureOf(of, interval, componentCount));

function procedureOf(of: FhirCase, { what, way, from, to, on }: Interval, componentCount: number): Made {
  const { protocol } = of.file;
  const name = [spanName(what, protocol), way && wayName(what, way, protocol)].filter(Boolean).join(", ");
  const components = Array.from({ length: componentCount }, (_, i) => of.reference(componentPart(i)));
  const resource = filled({
    resourceType: "Procedure",
    ...ofFact(of, on),
    status: to === null ? "in-progress" : "completed",
    code: concept(name, lookUp(SPAN_CODES, what)),
    performedPeriod: of.period(from, to),
    performer: performers(of, on.entry),
    partOf: what === "bypass" ? [] : within(of, "bypass", from),
    usedReference: what === "bypass" ? components : [],
  });
  return { resource, from: [on.entry.id, ...offEntries(of, what, from, to)] };
}

/** The entries that ended it. */
const offEntries = ({ run }: FhirCase, what: string, from: number, to: number | null): string[] =>
  run.course.record.facts.flatMap(({ entry, at }) =>
    entry.kind === "span" && entry.what === what && entry.state === "off" && at === to && at >= from
      ? [entry.id]
      : [],
  );

/** The interval of a span in which a moment lies, as a reference. */
export const within = (of: FhirCase, what: string, moment: number): Reference[] =>
  heldAt(of.run.course.spans, what, moment).map(({ on }) => of.reference(on.entry.id));

const heldAt = (spans: Spans, what: string, moment: number): readonly Interval[] =>
  intervalsOf(spans, what).filter((interval) => isOnAt([interval], moment));

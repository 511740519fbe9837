/** What was derived: every figure with its method, and what it was derived from. */
import { lookUp } from "../format/look-up.ts";
import { ofKind } from "../record/standing.ts";
import { type FhirCase, SUBJECT } from "./fhir-case.ts";
import { FIGURE_CODES } from "./fhir-codes.ts";
import { deliveries } from "./fhir-delivery.ts";
import { valuePart } from "./fhir-observed.ts";
import { absent, concept, filled, quantity } from "./fhir-parts.ts";
import { PROGRAM } from "./fhir-people.ts";
import type { Made, Resource } from "./fhir-types.ts";
import { figureWords } from "./figure-words.ts";
import { figuresOf, type NamedFigure } from "./figures.ts";

const figurePart = (name: string): string => `figure/${name}`;

/** Every figure of the case at the document's moment; one that lacks something says what, in the place of a value. */
export function derivedFigures(of: FhirCase): Made[] {
  const figures = figuresOf(of.file, of.at);
  const known = new Set(figures.filter(({ value }) => value !== null).map(({ name }) => name));
  return figures.map((figure) => ({ resource: derivedFigure(of, figure, known), from: [] }));
}

function derivedFigure(of: FhirCase, figure: NamedFigure, known: ReadonlySet<string>): Resource {
  const { name, value, unit, working, source } = figure;
  const made = source === undefined ? working : `${working} (${source})`;
  return filled({
    resourceType: "Observation",
    id: of.id(figurePart(name)),
    status: of.isFinal ? "final" : "preliminary",
    code: concept(figureWords(name).label, lookUp(FIGURE_CODES, name)),
    subject: of.reference(SUBJECT),
    effectiveDateTime: of.moment(of.run.now),
    valueQuantity: value === null ? undefined : quantity(value, unit),
    dataAbsentReason: value === null ? absent(working) : undefined,
    method: value === null ? undefined : concept(made),
    device: of.reference(PROGRAM),
    partOf: TIMED[name]?.(of).map(of.reference) ?? [],
    derivedFrom: value === null ? [] : originsOf(of, name, known).map(of.reference),
  });
}

const intervalsFor = (what: string) => (of: FhirCase) =>
  (of.run.course.spans.get(what) ?? []).map(({ on }) => on.entry.id);

/** The procedures whose time a figure is. */
const TIMED: Readonly<Record<string, (of: FhirCase) => string[]>> = {
  bypassTime: intervalsFor("bypass"),
  arrestTime: intervalsFor("clamp"),
  circulatoryArrestTime: intervalsFor("circulatory-arrest"),
};

/** Figures that are made of figures. */
const OF_FIGURES: Readonly<Record<string, readonly string[]>> = {
  arrestCrystalloid: ["arrestGiven"],
  fluidIn: ["arrestCrystalloid"],
  out: ["urine", "ultrafiltrate", "otherOut"],
  net: ["fluidIn", "out"],
  netToPatient: ["net", "leftInPump"],
  heparinPerKg: ["heparinTotal"],
  protamineOnFirst: ["heparinFirst"],
  protamineOnTotal: ["heparinTotal"],
};

const OF_WEIGHT = ["heparinPerKg", "urineRate", "fullFlow"];
const OF_HEIGHT = ["fullFlow"];
const OF_DELIVERY = ["deliveryLowest", "deliveryBelowMinutes", "deliveryBelowArea"];

/** The parts of the document that hold what a figure was made from. */
function originsOf(of: FhirCase, name: string, known: ReadonlySet<string>): string[] {
  const figures = (OF_FIGURES[name] ?? []).filter((one) => known.has(one)).map(figurePart);
  return [
    ...figures,
    ...volumesOf(of, name),
    ...(OF_WEIGHT.includes(name) ? lastTold(of, "weight") : []),
    ...(OF_HEIGHT.includes(name) ? lastTold(of, "height") : []),
    ...(OF_DELIVERY.includes(name) ? deliveries(of).map(({ part }) => part) : []),
    ...(name === "lastAct" ? last(ofKind(of.run.course.record.facts, "act")) : []),
    ...(name === "leftInPump" ? last(ofKind(of.run.course.record.facts, "level")) : []),
  ];
}

const last = (facts: readonly { entry: { id: string } }[]): string[] =>
  facts.slice(-1).map(({ entry }) => entry.id);

/** The value of the patient that stands: of the last entry that told it. */
const lastTold = ({ run }: FhirCase, field: "weight" | "height"): string[] =>
  last(ofKind(run.course.record.facts, "patient").filter(({ entry }) => entry[field] !== undefined)).map(
    (id) => valuePart(id, field),
  );

function volumesOf({ run }: FhirCase, name: string): string[] {
  const test = lookUp(VOLUMES, name);
  return run.course.volumes.flatMap(({ fact: { entry } }) =>
    test?.(entry.direction, entry.fluid) ? [entry.id] : [],
  );
}

type VolumeTest = (direction: "in" | "out" | "returned", fluid: string) => boolean;

const OWN = ["urine", "ultrafiltrate"];

const VOLUMES: Readonly<Record<string, VolumeTest>> = {
  fluidIn: (direction) => direction === "in",
  urine: (direction, fluid) => direction === "out" && fluid === "urine",
  ultrafiltrate: (direction, fluid) => direction === "out" && fluid === "ultrafiltrate",
  otherOut: (direction, fluid) => direction === "out" && !OWN.includes(fluid),
  returned: (direction) => direction === "returned",
  urineRate: (direction, fluid) => direction === "out" && fluid === "urine",
};

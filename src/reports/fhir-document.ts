/** A case as a FHIR R4 document: the Composition first, then everything it speaks of. */
import { entryWords } from "../figures/entry-words.ts";
import { CAUTIONS } from "../format/cautions.ts";
import { clockTime, type Instant, msOf, toIso } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry, Kind } from "../record/entry.ts";
import { COMPOSITION, type FhirCase, fhirCase, personPart, SUBJECT } from "./fhir-case.ts";
import { changes } from "./fhir-changes.ts";
import { deliveriesOverTime } from "./fhir-delivery.ts";
import { derivedFigures } from "./fhir-figures.ts";
import { gaps } from "./fhir-gaps.ts";
import { medicationsGiven } from "./fhir-given.ts";
import { observations } from "./fhir-observed.ts";
import { concept, filled, narrative, textOf } from "./fhir-parts.ts";
import { components, initialsIn, PROGRAM, patientResource, people, program } from "./fhir-people.ts";
import { procedures } from "./fhir-spans.ts";
import type { Bundle, Made, Resource } from "./fhir-types.ts";
import { figureWords, valueText } from "./figure-words.ts";
import { figuresOf } from "./figures.ts";

/** `checksum`: SHA-256 of the case file in hex, as the caller read it; left out where there is no file. */
export function fhirDocument(file: CaseFile, at: Instant, checksum?: string): Bundle {
  const of = fhirCase(file, at);
  const devices = components(of);
  const sections: Section[] = [
    { title: "Bypass, clamp and other spans", made: procedures(of, devices.length) },
    { title: "Arrest solution, heparin, protamine and drugs", made: medicationsGiven(of) },
    { title: "Readings, gases, clotting tests and volumes", made: [...observations(of), ...gaps(of)] },
    { title: "Oxygen delivery over the run", made: deliveriesOverTime(of) },
    { title: "Figures, each with its method", made: derivedFigures(of), lines: figureLines(of) },
    { title: "Components of the circuit", made: devices },
  ];
  const made = sections.flatMap((section) => section.made);
  const corrections = changes(of, made);
  const resources = [
    composition(of, sections, checksum),
    patientResource(of),
    ...people(of),
    program(of),
    ...[...made, ...corrections].map(({ resource }) => resource),
  ];
  return {
    resourceType: "Bundle",
    type: "document",
    identifier: { system: "urn:ietf:rfc:3986", value: `urn:uuid:${of.id("document")}` },
    timestamp: toIso(at),
    entry: resources.map((resource) => ({ fullUrl: `urn:uuid:${resource.id}`, resource })),
  };
}

type Section = {
  readonly title: string;
  readonly made: readonly Made[];
  readonly lines?: readonly string[];
};

function composition(of: FhirCase, sections: readonly Section[], checksum: string | undefined): Resource {
  const authors = initialsIn(of).map((initials) => of.reference(personPart(initials)));
  return filled({
    resourceType: "Composition",
    id: of.id(COMPOSITION),
    identifier: { system: "urn:ietf:rfc:3986", value: `urn:uuid:${of.id("document")}` },
    text: narrative([...CAUTIONS, ...(checksum ? [`SHA-256 of the case file: ${checksum}`] : [])]),
    status: of.isFinal ? "final" : "preliminary",
    type: concept("perfusion record of a bypass run"),
    subject: of.reference(SUBJECT),
    date: toIso(of.at),
    author: authors.length > 0 ? authors : [of.reference(PROGRAM)],
    title: `Perfusion record: ${textOf(of.file.label) ?? of.file.id}`,
    section: [...sections.map((section) => sectionOf(section)), ...toldSections(of)],
  });
}

/** A section says in words what its parts hold, or that there is nothing. */
function sectionOf({ title, made, lines = [] }: Section): object {
  const entry = made.map(({ resource }) => ({ reference: `urn:uuid:${resource.id}` }));
  const said = made.length === 0 ? ["Nothing recorded."] : lines;
  return filled({ title, text: said.length > 0 ? narrative(said) : undefined, entry });
}

const figureLines = (of: FhirCase): string[] =>
  figuresOf(of.file, of.at).map(
    ({ name, ...figure }) => `${figureWords(name).label}: ${valueText(name, figure)} (${figure.working})`,
  );

const INCIDENTS: readonly Kind[] = ["incident"];

/** What is told in words alone: people, incidents, and the whole log as it was written. */
const toldSections = (of: FhirCase): object[] => [
  wordsSection(of, "Team", ["team", "operator"]),
  wordsSection(of, "Incidents", INCIDENTS),
  wordsSection(of, "The log as it was written", null),
];

function wordsSection(of: FhirCase, title: string, kinds: readonly Kind[] | null): object {
  const lines = of.file.entries
    .filter(({ kind }) => kinds === null || kinds.includes(kind))
    .map((entry) => logLine(of, entry));
  return { title, text: narrative(lines.length > 0 ? lines : ["Nothing recorded."]) };
}

function logLine(of: FhirCase, entry: Entry): string {
  const { subject, says } = entryWords(entry, of.file.protocol);
  const note = entry.note ? ` (${entry.note})` : "";
  const when = clockTime({ ms: msOf(entry.at), offset: of.at.offset });
  return `${when} #${entry.seq} ${entry.by} ${subject} ${says}${note}`;
}

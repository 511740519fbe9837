/** What every part of the FHIR document needs to know of the case: its figures, its moments and the ids of its parts. */
import { type Run, readRun } from "../figures/run.ts";
import { type Instant, msOf } from "../format/instant.ts";
import type { CaseFile } from "../record/case.ts";
import type { Entry } from "../record/entry.ts";
import type { Fact } from "../record/standing.ts";
import { filled, momentOf, textOf } from "./fhir-parts.ts";
import type { Period, Reference } from "./fhir-types.ts";
import { nameUuid } from "./name-uuid.ts";

export type FhirCase = {
  readonly file: CaseFile;
  readonly at: Instant;
  readonly run: Run;
  /** Whether the case has been closed: what is derived from it is final then. */
  readonly isFinal: boolean;
  /** The id of a part, which follows from the case's id and the part's name. */
  readonly id: (part: string) => string;
  readonly reference: (part: string) => Reference;
  readonly moment: (ms: number) => string;
  /** From one moment to another, or from one on. */
  readonly period: (from: number, to: number | null) => Period;
};

/** The case at the moment of the document, whose offset is that of every time in it. */
export function fhirCase(file: CaseFile, at: Instant): FhirCase {
  const run = readRun(file, at.ms);
  // The patient and the people are pointed at by every part.
  const known = new Map<string, string>();
  const id = (part: string): string => {
    const found = known.get(part) ?? nameUuid(`${file.id}/${part}`);
    known.set(part, found);
    return found;
  };
  return {
    file,
    at,
    run,
    isFinal: run.course.closedAt !== null,
    id,
    reference: (part) => ({ reference: `urn:uuid:${id(part)}` }),
    moment: (ms) => momentOf(ms, at),
    period: (from, to) =>
      filled({ start: momentOf(from, at), end: to === null ? undefined : momentOf(to, at) }),
  };
}

export const SUBJECT = "patient";
export const COMPOSITION = "composition";
export const personPart = (initials: string): string => `person/${initials}`;

/** The person who signed an entry; `undefined` where nobody did. */
export const whoWrote = ({ reference }: FhirCase, { by }: Pick<Entry, "by">): Reference | undefined =>
  textOf(by) === undefined ? undefined : reference(personPart(by));

/** What every resource of a fact says: its id, whom it is about, when it was, and what was noted. */
export const ofFact = (of: FhirCase, { entry }: Pick<Fact, "entry">, part: string = entry.id) => ({
  id: of.id(part),
  subject: of.reference(SUBJECT),
  note: notes(entry.note),
});

/** Notes as FHIR takes them; none for nothing said. */
export const notes = (...said: (string | undefined)[]) =>
  said.flatMap((one) => {
    const text = textOf(one);
    return text === undefined ? [] : [{ text }];
  });

/** When a fact happened, as put right. */
export const happened = (of: FhirCase, { entry }: Pick<Fact, "entry">): string => of.moment(msOf(entry.at));

/** How far a measured fact stands. */
export const standingOf = ({ struck, corrections }: Fact, asItWas: string, putRight: string): string => {
  if (struck) return "entered-in-error";
  return corrections.length > 0 ? putRight : asItWas;
};

/** Who did it, as procedures and medications tell it; nobody where the entry is not signed. */
export function performers(of: FhirCase, entry: Pick<Entry, "by">): { readonly actor: Reference }[] {
  const actor = whoWrote(of, entry);
  return actor ? [{ actor }] : [];
}

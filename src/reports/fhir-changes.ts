/** Who put what right, and when: a Provenance for every correction, those that were themselves struck out among them. */
import { entryWords } from "../figures/entry-words.ts";
import { msOf } from "../format/instant.ts";
import type { Entry } from "../record/entry.ts";
import type { Correction } from "../record/standing.ts";
import { COMPOSITION, type FhirCase, notes, whoWrote } from "./fhir-case.ts";
import { concept, filled } from "./fhir-parts.ts";
import type { Made, Reference, Resource } from "./fhir-types.ts";

/** `made`: the resources of the document. A correction of what has none of its own points at the whole. */
export const changes = (of: FhirCase, made: readonly Made[]): Made[] =>
  of.file.entries
    .filter((entry): entry is Correction => entry.kind === "amend" || entry.kind === "void")
    .map((entry) => ({ resource: changeOf(of, entry, targetsOf(of, entry, made)), from: [entry.id] }));

function targetsOf(of: FhirCase, { target }: Correction, made: readonly Made[]): Reference[] {
  const own = made.filter(({ from }) => from.includes(target)).map(({ resource }) => resource.id);
  return own.length === 0 ? [of.reference(COMPOSITION)] : own.map((id) => ({ reference: `urn:uuid:${id}` }));
}

function changeOf(of: FhirCase, entry: Correction, target: readonly Reference[]): Resource {
  const before = of.file.entries.find(({ id }) => id === entry.target);
  const reason = entry.kind === "void" ? entry.reason : entry.note;
  return filled({
    resourceType: "Provenance",
    id: of.id(entry.id),
    target,
    occurredDateTime: of.moment(msOf(entry.at)),
    recorded: of.moment(msOf(entry.loggedAt)),
    activity: concept(entry.kind === "void" ? "struck out" : "put right"),
    reason: notes(reason),
    agent: [{ who: whoWrote(of, entry) ?? { display: "not recorded" } }],
    entity: before === undefined ? [] : [{ role: "revision", what: { display: asWritten(of, before) } }],
  });
}

/** The entry as it was first written, in words. */
function asWritten(of: FhirCase, entry: Entry): string {
  const { subject, says } = entryWords(entry, of.file.protocol);
  return `entry ${entry.seq} as it was written: ${subject} ${says}`.trim();
}

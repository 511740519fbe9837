// The FHIR document: what a general validator says of it, that it hangs together, and that its sums are the record's.

import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { type Instant, msOf } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import * as codes from "../../src/reports/fhir-codes.ts";
import { fhirDocument } from "../../src/reports/fhir-document.ts";
import { ARREST_SOLUTION } from "../../src/reports/fhir-given.ts";
import { UCUM_UNITS } from "../../src/reports/fhir-parts.ts";
import type { Bundle, Resource } from "../../src/reports/fhir-types.ts";
import { figuresOf } from "../../src/reports/figures.ts";
import { withoutNames } from "../../src/reports/without-names.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { given, typed, typedOn } from "../helpers/typed-case.ts";
import { ucum } from "../helpers/ucum.ts";
import { caseOf } from "../samples/samples.ts";
import { HOSTILE, hostileCase } from "./hostile.ts";

type Message = { severity: string; location?: string; message?: string };
type Validator = {
  validate(resource: object, options: object): { valid: boolean; messages: Message[] };
};

const { Fhir } = createRequire(import.meta.url)("fhir") as { Fhir: new () => Validator };
const validator = new Fhir();

/** What the validator holds against a document. It knows no list of clinical codes, which it says of each of them. */
function faults(document: Bundle): string[] {
  const { messages } = validator.validate(JSON.parse(JSON.stringify(document)), { errorOnUnexpected: true });
  return messages
    .filter(({ severity }) => severity !== "info")
    .map(({ severity, location, message }) => `${severity} ${location}: ${message}`)
    .filter((text) => !/^warning \S+: Code "[\d-]+" \(http:\/\/(loinc\.org|snomed\.info\/sct)\)/.test(text));
}

const endOf = ({ entries }: CaseFile): Instant => ({ ms: msOf(entries.at(-1)?.loggedAt ?? ""), offset: 60 });
const documentOf = (file: CaseFile) => fhirDocument(file, endOf(file), "0".repeat(64));
const resourcesOf = (document: Bundle) => document.entry.map(({ resource }) => resource);
const ofType = (document: Bundle, type: string) =>
  resourcesOf(document).filter(({ resourceType }) => resourceType === type);

/** Every value of one field, however deep. */
function valuesOf(value: unknown, field: string): unknown[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [
    ...(key === field ? [inner] : []),
    ...valuesOf(inner, field),
  ]);
}

const danglingIn = (document: Bundle): unknown[] => {
  const ids = new Set(document.entry.map(({ fullUrl }) => fullUrl));
  return valuesOf(document, "reference").filter((one) => typeof one !== "string" || !ids.has(one));
};

const textOf = (resource: Resource | undefined, field: string) =>
  (resource?.[field] as { text?: string } | undefined)?.text;
const quantityOf = (resource: Resource | undefined) =>
  resource?.valueQuantity as { value: number; unit: string; code: string } | undefined;

/** The arrest solution of all administrations that stand, in mL. */
const arrestSum = (document: Bundle): number =>
  ofType(document, "MedicationAdministration")
    .filter((one) => textOf(one, "category") === ARREST_SOLUTION && one.status !== "entered-in-error")
    .reduce((sum, { dosage }) => sum + ((dosage as { dose?: { value: number } })?.dose?.value ?? 0), 0);

const figure = (file: CaseFile, name: string) =>
  figuresOf(file, endOf(file)).find((one) => one.name === name)?.value;
const observed = (document: Bundle, name: string) =>
  ofType(document, "Observation").find((one) => textOf(one, "code") === name);

const holds = (file: CaseFile) => {
  const document = documentOf(file);
  expect(faults(document)).toEqual([]);
  expect(danglingIn(document)).toEqual([]);
  const ids = document.entry.map(({ fullUrl }) => fullUrl);
  expect(new Set(ids).size).toBe(ids.length);
  expect(document.entry[0]?.resource.resourceType).toBe("Composition");
  expect(arrestSum(document)).toBeCloseTo(figure(file, "arrestGiven") ?? 0, 6);
};

describe.each(INVENTED)("$label", (script) => {
  const file = caseOf(script);
  const document = documentOf(file);

  test("is a document without fault, with names and without", () => {
    holds(file);
    holds(withoutNames(file));
  });

  test("is the same document every time, and a different one for another case", () => {
    expect(JSON.stringify(documentOf(file))).toBe(JSON.stringify(document));
    const other = documentOf({ ...file, id: `${file.id}-b` });
    expect(other.entry[0]?.fullUrl).not.toBe(document.entry[0]?.fullUrl);
  });

  test("has a procedure for every time on bypass and under the clamp", () => {
    const lasted = (name: string) =>
      ofType(document, "Procedure")
        .filter((one) => textOf(one, "code") === name)
        .map(({ performedPeriod }) => performedPeriod as { start: string; end: string })
        .reduce((sum, { start, end }) => sum + msOf(end) - msOf(start), 0) / 1000;
    expect(lasted("bypass")).toBe(figure(file, "bypassTime"));
    expect(lasted("clamp")).toBe(figure(file, "arrestTime"));
  });

  test("has all heparin and all protamine that was given", () => {
    const given = (name: string) =>
      ofType(document, "MedicationAdministration")
        .filter((one) => textOf(one, "medicationCodeableConcept") === name && one.status === "completed")
        .reduce((sum, { dosage }) => sum + (dosage as { dose: { value: number } }).dose.value, 0);
    expect(given("heparin")).toBe(figure(file, "heparinTotal"));
    expect(given("protamine")).toBe(figure(file, "protamineGiven"));
  });

  test("has a provenance for every correction", () => {
    const corrections = file.entries.filter(({ kind }) => kind === "amend" || kind === "void");
    expect(ofType(document, "Provenance")).toHaveLength(corrections.length);
  });

  test("says of every derived figure how it was made, or what it lacks", () => {
    for (const { name, value } of figuresOf(file, endOf(file))) {
      const words = valuesOf(document, "valueQuantity");
      expect(words.length, name).toBeGreaterThan(0);
      if (value !== null) expect(words.some((one) => (one as { value: number }).value === value)).toBe(true);
    }
    const derived = ofType(document, "Observation").filter(({ device }) => device !== undefined);
    for (const one of derived) expect(Boolean(one.method) !== Boolean(one.dataAbsentReason)).toBe(true);
  });
});

// CHECK-VALUES §13.2 lists these as not seen on any page.
const NOT_SEEN = ["3140-1", "8277-6", "4544-3", "20570-8", "2744-1", "2019-8", "2703-7"];

const ALL_CODES = Object.values(codes).flatMap((one): codes.SeenCode[] =>
  "system" in one ? [one as codes.SeenCode] : Object.values(one),
);

test("every code says where it was seen, and none is one that was not", () => {
  expect(ALL_CODES.filter(({ seen }) => seen === "")).toEqual([]);
  expect(ALL_CODES.filter(({ code }) => NOT_SEEN.includes(code))).toEqual([]);
});

test("every unit is UCUM, and every code is one of those that were seen", () => {
  expect([...UCUM_UNITS].filter((unit) => ucum.validateUnitString(unit).status !== "valid")).toEqual([]);
  const seen = new Set(ALL_CODES.map(({ system, code }) => `${system} ${code}`));
  for (const script of INVENTED) {
    const document = documentOf(caseOf(script));
    for (const { code, system } of valuesOf(document, "valueQuantity") as { code: string; system: string }[])
      expect([system, UCUM_UNITS.has(code)]).toEqual(["http://unitsofmeasure.org", true]);
    for (const coding of valuesOf(document, "coding").flat() as { system: string; code: string }[])
      if (!coding.system.startsWith("http://terminology.hl7.org/"))
        expect(seen).toContain(`${coding.system} ${coding.code}`);
  }
});

test("what is derived points at what it was derived from", () => {
  const file = caseOf(INVENTED[0] as (typeof INVENTED)[number]);
  const document = documentOf(file);
  const originsOf = (name: string) =>
    ((observed(document, name)?.derivedFrom ?? []) as { reference: string }[]).map(({ reference }) =>
      textOf(document.entry.find(({ fullUrl }) => fullUrl === reference)?.resource, "code"),
    );
  expect(originsOf("net (in - out)")).toEqual(["fluid in", "out in all"]);
  expect(originsOf("heparin by weight")).toEqual(["heparin in all", "body weight"]);
  expect(originsOf("oxygen delivery index").length).toBeGreaterThanOrEqual(4);
  expect(textOf(observed(document, "oxygen delivery index"), "method")).toContain("1.34");
});

test("a dose put right is told as it stands, and the provenance as it was", () => {
  const file = typed(["09:00 b", "09:05 x", "09:06 d 300", "09:20 z 350 ; read wrongly"]);
  const document = documentOf(file);
  expect(arrestSum(document)).toBe(350);
  const [provenance] = ofType(document, "Provenance");
  const dose = ofType(document, "MedicationAdministration")[0];
  expect(provenance?.target).toEqual([{ reference: `urn:uuid:${dose?.id}` }]);
  expect(JSON.stringify(provenance?.entity)).toContain("300 mL");
});

test("a value that was struck out stays in the document, marked as an error, and counts nowhere", () => {
  const file = typed(["08:50 h 28000", "08:55 h 28000", "08:56 z ! twice"]);
  const document = documentOf(file);
  const states = ofType(document, "MedicationAdministration").map(({ status }) => status);
  expect(states).toEqual(["completed", "entered-in-error"]);
  expect(quantityOf(observed(document, "heparin in all"))?.value).toBe(28_000);
});

test("a correction of what has no part of its own points at the whole document", () => {
  const file = typedOn(typed(["09:00 n too early"]), ["09:01 z ! wrong case"]);
  const document = documentOf(file);
  expect(ofType(document, "Provenance")[0]?.target).toEqual([{ reference: document.entry[0]?.fullUrl }]);
});

test("a dose without a volume has no amount and says why; a running span has no end", () => {
  const document = documentOf(typed(["09:00 b", "09:05 x", "09:06 d"]));
  const [dose] = ofType(document, "MedicationAdministration");
  expect([dose?.status, dose?.dosage, JSON.stringify(dose?.note)]).toEqual([
    "in-progress",
    undefined,
    '[{"text":"volume not recorded"}]',
  ]);
  expect(ofType(document, "Procedure").map(({ status }) => status)).toEqual(["in-progress", "in-progress"]);
  expect(document.entry[0]?.resource.status).toBe("preliminary");
});

test("what the protocol asks for and nobody recorded is told as absent, never as nought", () => {
  const document = documentOf(typed(["09:00 b", "09:30 b off"]));
  const gap = observed(document, "mean arterial pressure");
  expect([gap?.valueQuantity, textOf(gap, "dataAbsentReason")]).toEqual([
    undefined,
    "asked for by the protocol, never recorded",
  ]);
  expect(textOf(observed(document, "urine"), "dataAbsentReason")).toBe("no urine recorded");
});

test("the patient is a local number and nothing more", () => {
  const patient = { kind: "patient", number: "17", name: "Ada Lovelace", born: "1956-02-29" } as const;
  const text = JSON.stringify(documentOf(given(typed(["09:00 b"]), { ...patient, sex: "female" }, "09:01")));
  const [resource] = ofType(documentOf(given(typed([]), patient, "09:01")), "Patient");
  expect(JSON.stringify(resource?.identifier)).toContain('"17"');
  expect(Object.keys(resource ?? {})).toEqual(["resourceType", "id", "identifier", "gender"]);
  expect(JSON.stringify(ofType(JSON.parse(text), "Patient"))).not.toContain("Lovelace");
});

test.each(HOSTILE)("%s in every text makes no fault, no markup and no control character", (...hostile) => {
  const file = hostileCase(hostile);
  holds(file);
  const texts = stringsIn(documentOf(file));
  expect(texts.filter((text) => /[\p{Cc}\p{Cf}\p{Cs}]/u.test(text))).toEqual([]);
  const tags = texts.filter((text) => text.startsWith("<div")).flatMap((text) => text.match(/<[^>]*>/g));
  expect(new Set(tags)).toEqual(
    new Set(['<div xmlns="http://www.w3.org/1999/xhtml">', "<p>", "</p>", "</div>"]),
  );
});

const stringsIn = (value: unknown): string[] => {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(stringsIn) : [];
};

test("any run of strokes makes a document without fault whose doses sum to the balance", () => {
  fc.assert(
    fc.property(anyRun(25), (run) => holds(play(run))),
    { numRuns: 60 },
  );
});

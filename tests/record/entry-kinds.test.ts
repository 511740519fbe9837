/** Every kind of entry: what is taken, and what is refused and why. */
import { describe, expect, test } from "vitest";
import { entrySchema, type Kind } from "../../src/record/entry.ts";
import { faultOf } from "../../src/record/reading-a-file.ts";
import { EVERY_KIND, KINDS, sampleOf } from "../helpers/every-kind.ts";

const faultIn = (entry: object): string => {
  const parsed = entrySchema.safeParse(entry);
  return parsed.success ? "" : faultOf(parsed.error);
};

test("there is a sample of every kind, and no kind more", () => {
  expect(EVERY_KIND.map(({ kind }) => kind).toSorted()).toEqual(KINDS.toSorted());
});

test.each(EVERY_KIND.map(({ kind }) => [kind]))("a valid %s is taken as it is", (kind) => {
  expect(entrySchema.parse(sampleOf(kind))).toEqual(sampleOf(kind));
});

describe.each(["id", "seq", "at", "loggedAt", "by", "typed", "kind"])("without %s", (field) => {
  test("no entry is taken", () => {
    const faults = EVERY_KIND.map(({ kind }) => faultIn(sampleOf(kind, { [field]: undefined })));
    expect(faults.filter((fault) => !fault.startsWith(`at ${field}: `))).toEqual([]);
  });
});

/** The place is the replaced field, unless another is named; the whole entry has none. */
const wrong: [what: string, kind: Kind, replaced: object, place?: string][] = [
  ["a time without its offset", "note", { at: "2026-03-04T10:00:00" }],
  ["a day that does not exist", "note", { at: "2026-02-30T10:00:00.000+01:00" }],
  ["an id without e", "note", { id: "1" }],
  ["number nought", "note", { seq: 0 }],
  ["half a number", "note", { seq: 1.5 }],
  ["words without end", "note", { text: "a".repeat(4001) }],
  ["a note that is a number", "note", { note: 5 }],
  ["a kind nobody knows", "note", { kind: "song" }],
  ["a weight of nought", "patient", { weight: 0 }],
  ["a height in millimetres", "patient", { height: 1700 }],
  ["a birthday that is none", "patient", { born: "1957-02-29" }],
  ["a full flow of sixteen litres", "plan", { fullFlow: 16 }],
  ["a prime below nought", "plan", { prime: [{ fluid: "prime", ml: -1 }] }],
  ["a person without a role", "team", { people: [{ who: "CD" }] }],
  ["a span that is half on", "span", { state: "half" }],
  ["a span without a name", "span", { what: "" }],
  ["a flow in both ways", "flow", { litresPerMinute: 4, fraction: 0.75 }, ""],
  ["a flow in neither way", "flow", { fraction: undefined }, ""],
  ["a fraction above full", "flow", { fraction: 1.25 }],
  ["fifty degrees", "target", { celsius: 50 }],
  ["a reminder at no time", "reminder", { dueAt: "soon" }],
  ["a dose that ended without millilitres", "dose", { state: "end", ml: undefined }, "ml"],
  ["a dose so far without millilitres", "dose", { state: "so-far", ml: undefined }, "ml"],
  ["a whole dose without millilitres", "dose", { ml: undefined }],
  ["a dose below nought", "dose", { ml: -300 }],
  ["a route nobody knows", "dose", { route: "vein" }],
  ["a volume told in both ways", "volume", { ml: 100 }, ""],
  ["a volume told in neither way", "volume", { bagTotal: undefined }, ""],
  ["a volume of a hundred and one litres", "volume", { bagTotal: 101_000 }],
  ["a level that is words", "level", { ml: "800" }],
  ["a drug without a unit", "drug", { unit: "" }],
  ["an ACT below nought", "act", { seconds: -1 }],
  ["a reading that is words", "readings", { values: { flow: "4.5" } }],
  ["a sample from nowhere", "gas", { sample: "mixed" }],
  ["a correction of who wrote it", "amend", { changes: { by: "XY" } }],
  ["a correction of when it was written", "amend", { changes: { loggedAt: "2026-03-04T10:00:00.000Z" } }],
  ["a correction of the kind", "amend", { changes: { kind: "note" } }],
  ["a correction of nothing named", "amend", { target: "dose" }],
  ["a strike without a reason", "void", { reason: undefined }],
  ["a step of the clock in words", "clock", { stepMs: "an hour" }],
];

test.each(wrong)("%s is refused with its place and one reason", (_, kind, replaced, place) => {
  const fault = faultIn(sampleOf(kind, replaced));
  const named = place ?? (Object.keys(replaced)[0] as string);
  expect(fault).toMatch(named === "" ? /^an? [^\n.]+$/ : new RegExp(`^at ${named}[\\w ]*: [^\\n]*[^.\\n]$`));
});

test("a dose may be started without millilitres", () => {
  expect(faultIn(sampleOf("dose", { state: "start", ml: undefined }))).toBe("");
});

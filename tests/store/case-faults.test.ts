// What can be wrong with a case that can be read, besides its chain: times, and what follows a closing.

import { expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { caseFaults } from "../../src/store/case-faults.ts";
import { timeFaults } from "../../src/store/times-fault.ts";
import { aCase, withEntry } from "./cases.ts";
import { noteAt, withNotes } from "./notes.ts";

/** The same case with times of its entries changed, by sequence number. */
const retimed = (file: CaseFile, times: Record<number, Partial<Entry>>): CaseFile => ({
  ...file,
  entries: file.entries.map((entry) => ({ ...entry, ...times[entry.seq] }) as Entry),
});

const without = (faults: string[]) => faults.filter((fault) => !fault.startsWith("it carries no hashes"));

test("a case as it is logged has no fault in its times", () => {
  expect(timeFaults(withNotes(aCase(), 5))).toEqual([]);
});

test("an entry written before the one before it is a fault, unless a clock entry says why", () => {
  const early = { loggedAt: "2026-03-04T08:01:30.000+00:00", at: "2026-03-04T08:01:30.000+00:00" };
  const file = withNotes(aCase(), 3);
  expect(timeFaults(retimed(file, { 3: early }))).toEqual([
    "entry 3 says that it was written at 08:01:30, before entry 2 (08:02:00), and no clock entry says why.",
  ]);
  const stepped = withEntry(withNotes(aCase(), 1), { kind: "clock", stepMs: -90_000 });
  expect(timeFaults(retimed(stepped, { 3: early }))).toEqual([]);
});

test("times are compared as moments, whatever their offsets", () => {
  const file = retimed(withNotes(aCase(), 2), {
    2: { at: "2026-03-04T10:02:00.000+02:00", loggedAt: "2026-03-04T10:02:00.000+02:00" },
  });
  expect(timeFaults(file)).toEqual([]);
});

test("an entry about something that happens later than it was written is a fault, a minute apart is none", () => {
  const at = (minute: number) => ({ 2: { at: `2026-03-04T08:0${minute}:00.000+00:00` } });
  const file = withNotes(aCase(), 1);
  expect(timeFaults(retimed(file, at(3)))).toEqual([]);
  expect(timeFaults(retimed(file, at(4)))).toEqual([
    "entry 2 was written at 08:02:00 about something that happens later.",
  ]);
  const amended = withEntry(file, {
    kind: "amend",
    target: "e2",
    changes: { at: "2026-03-04T09:00:00.000+00:00" },
  });
  expect(timeFaults(amended)).toHaveLength(1);
});

test("what is written after a closing is a fault, until the case is reopened", () => {
  const closed = withEntry(aCase(), { kind: "closed", operator: "AB" });
  expect(without(caseFaults(closed))).toEqual([]);
  expect(without(caseFaults(withEntry(closed, { kind: "clock", stepMs: 5000 })))).toEqual([]);
  expect(without(caseFaults({ ...closed, entries: [...closed.entries, noteAt(3)] }))).toEqual([
    "entry 3 was written after the case was closed (entry 2).",
  ]);
  const reopened = withEntry(closed, { kind: "reopened", operator: "AB", reason: "more" });
  expect(without(caseFaults({ ...reopened, entries: [...reopened.entries, noteAt(4)] }))).toEqual([]);
});

test("a case that nobody opened is a fault", () => {
  expect(without(caseFaults({ ...aCase(), entries: [] }))).toEqual(["the case has no entries."]);
  expect(without(caseFaults({ ...aCase(), entries: [noteAt(1)] }))).toEqual([
    "the first entry does not open the case.",
  ]);
});

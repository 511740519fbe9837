// Choosing cases for a list, and their order.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { caseLines } from "../../src/reports/case-lines.ts";
import { caseSummary } from "../../src/reports/case-summary.ts";
import { chosen, sorted, type Told } from "../../src/reports/choose-cases.ts";
import { SORTS } from "../../src/reports/formats.ts";
import { typed } from "../helpers/typed-case.ts";

const told = (id: string, lines: readonly string[], more: object = {}): Told => ({
  ...caseSummary(typed(lines)),
  id,
  ...more,
});
const long = told("20260304-aaaaaa", ["08:00 b", "08:10 x", "09:00 x", "10:00 b"], { label: "Valve 1" });
const short = told("20260304-bbbbbb", ["08:00 b", "08:30 b"], {
  label: "graft 2",
  operation: "Three GRAFTS",
});
const running = told("20260304-cccccc", ["08:00 b", "08:20 x", "08:30 n still on"], { label: "arch 3" });
const never = told("20260304-dddddd", [], { label: "not begun", opened: "2026-03-01T07:00:00.000+01:00" });
const damaged: Told = { id: "20260302-broken", fault: "the file is not JSON, or was cut short." };
const all = [long, short, running, never, damaged];
const ids = (cases: readonly Told[]) => cases.map(({ id }) => id.slice(9));

describe("cases are chosen", () => {
  test("by their state", () => {
    const closed = { ...long, id: "20260304-closed", state: "closed" } as Told;
    expect(ids(chosen([...all, closed], { state: "closed" }))).toEqual(["closed"]);
  });

  test("by the day, both ends included, damaged ones by the day in their name", () => {
    expect(ids(chosen(all, { since: "2026-03-02" }))).toEqual(["aaaaaa", "bbbbbb", "cccccc", "broken"]);
    expect(ids(chosen(all, { until: "2026-03-02" }))).toEqual(["dddddd", "broken"]);
    expect(ids(chosen(all, { since: "2026-03-01", until: "2026-03-01" }))).toEqual(["dddddd"]);
  });

  test("by a part of operation or label, in large or small letters", () => {
    expect(ids(chosen(all, { operation: "grafts" }))).toEqual(["bbbbbb"]);
    expect(ids(chosen(all, { label: "VALVE" }))).toEqual(["aaaaaa"]);
  });
});

describe("cases are put in order", () => {
  test("by time on bypass, the longest first, and those that never were last either way", () => {
    expect(ids(sorted(all, "bypass"))).toEqual(["aaaaaa", "bbbbbb", "cccccc", "dddddd", "broken"]);
    expect(ids(sorted(all, "bypass", true))).toEqual(["cccccc", "bbbbbb", "aaaaaa", "dddddd", "broken"]);
  });

  test("by label, as a person would look one up", () => {
    expect(ids(sorted(all, "label"))).toEqual(["cccccc", "bbbbbb", "dddddd", "aaaaaa", "broken"]);
  });

  test("and none is lost or doubled by it", () => {
    fc.assert(
      fc.property(fc.subarray(all), fc.constantFrom(...SORTS), fc.boolean(), (cases, sort, reverse) => {
        expect(ids(sorted(cases, sort, reverse)).toSorted()).toEqual(ids(cases).toSorted());
      }),
    );
  });
});

test("the list says when, which, the state, the times, the indicators and what it was", () => {
  expect(caseLines(all)).toEqual([
    "date              case             state      bypass    arrest  indicators  label, operation",
    "2026-03-04 07:00  20260304-aaaaaa  open      2:00:00     50:00  –           Valve 1",
    "2026-03-04 07:00  20260304-bbbbbb  open        30:00         –  –           graft 2, Three GRAFTS",
    "2026-03-04 07:00  20260304-cccccc  open       30:00+    10:00+  –           arch 3",
    "2026-03-01 07:00  20260304-dddddd  open            –         –  –           not begun",
    "                  20260302-broken  unread                                   cannot be read: the file is not JSON, or was cut short.",
  ]);
});

test("an ACT at its target counts as met, one below it as missed, and none as neither", () => {
  const metIn = (lines: readonly string[]) =>
    caseLines([told("20260304-aaaaaa", lines)])[1]
      ?.slice(63, 75)
      .trim();
  expect(metIn(["08:00 b", "08:10 a 480"])).toBe("1 of 1 met");
  expect(metIn(["08:00 b", "08:10 a 479"])).toBe("0 of 1 met");
  expect(metIn(["08:00 b"])).toBe("–");
});

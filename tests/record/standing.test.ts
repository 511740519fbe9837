/** What stands once corrections are laid over what was written. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Draft, Entry } from "../../src/record/entry.ts";
import { lastOf, ofKind, standing } from "../../src/record/standing.ts";
import { at, given, minutes, openedCase } from "../helpers/typed-case.ts";

const dose = (ml: number): Draft => ({ kind: "dose", state: "whole", ml });
const amend = (target: string, changes: { [field: string]: string | number | null }): Draft => ({
  kind: "amend",
  target,
  changes,
});
const strike = (target: string): Draft => ({ kind: "void", target, reason: "slip" });

/** A case of these entries, the first of them e2, a minute apart from 08:00 on. */
const entriesOf = (...drafts: readonly Draft[]): readonly Entry[] =>
  drafts.reduce((file, draft, i) => given(file, draft, `08:${String(i).padStart(2, "0")}`), openedCase())
    .entries;

const factAt = (entries: readonly Entry[], id: string) =>
  standing(entries).written.find(({ logged }) => logged.id === id);

describe("an entry put right", () => {
  test("twice has the last value, and keeps what was first written beside it", () => {
    const entries = entriesOf(dose(300), amend("e2", { ml: 350 }), amend("e2", { ml: 340 }));
    const fact = factAt(entries, "e2");
    expect(fact).toMatchObject({ entry: { ml: 340 }, logged: { ml: 300 }, struck: false });
    expect(fact?.corrections.map(({ id }) => id)).toEqual(["e3", "e4"]);
  });

  test("in two fields has both", () => {
    const entries = entriesOf(dose(300), amend("e2", { ml: 350 }), amend("e2", { route: "root" }));
    expect(factAt(entries, "e2")?.entry).toMatchObject({ ml: 350, route: "root" });
  });

  test("to nothing loses the field", () => {
    const entries = entriesOf({ ...dose(300), route: "root" } as Draft, amend("e2", { route: null }));
    expect(factAt(entries, "e2")?.entry).not.toHaveProperty("route");
  });

  test("in its time moves among the others", () => {
    const entries = entriesOf(dose(100), dose(200), amend("e3", { at: "2026-03-04T07:30:00.000+01:00" }));
    expect(ofKind(standing(entries).facts, "dose").map(({ entry }) => entry.ml)).toEqual([200, 100]);
    expect(factAt(entries, "e3")?.at).toBe(at("07:30").ms);
  });
});

describe("an entry struck out", () => {
  test("is a fact no more, and is still among what was written", () => {
    const entries = entriesOf(dose(300), strike("e2"));
    expect(ofKind(standing(entries).facts, "dose")).toEqual([]);
    expect(factAt(entries, "e2")?.struck).toBe(true);
  });

  test("stands again once the strike is struck out, and falls again with that", () => {
    const back = entriesOf(dose(300), strike("e2"), strike("e3"));
    expect(factAt(back, "e2")).toMatchObject({ struck: false, corrections: [] });
    const fallen = entriesOf(dose(300), strike("e2"), strike("e3"), strike("e4"));
    expect(factAt(fallen, "e2")?.struck).toBe(true);
  });

  test("twice stands again only when both strikes are struck out", () => {
    const once = entriesOf(dose(300), strike("e2"), strike("e2"), strike("e3"));
    expect(factAt(once, "e2")?.struck).toBe(true);
    const twice = entriesOf(dose(300), strike("e2"), strike("e2"), strike("e3"), strike("e4"));
    expect(factAt(twice, "e2")?.struck).toBe(false);
  });
});

describe("a correction", () => {
  test("struck out has no force, and leaves the one before it", () => {
    const entries = entriesOf(dose(300), amend("e2", { ml: 350 }), amend("e2", { ml: 30 }), strike("e4"));
    expect(factAt(entries, "e2")?.entry).toMatchObject({ ml: 350 });
  });

  test("can itself be put right", () => {
    const wrongEntry = entriesOf(dose(300), dose(200), strike("e2"), amend("e4", { target: "e3" }));
    expect(ofKind(standing(wrongEntry).facts, "dose").map(({ entry }) => entry.ml)).toEqual([300]);
  });

  test("of a struck entry shows once the entry stands again", () => {
    const entries = entriesOf(dose(300), strike("e2"), amend("e2", { ml: 350 }), strike("e3"));
    expect(factAt(entries, "e2")).toMatchObject({ struck: false, entry: { ml: 350 } });
  });
});

describe("the order", () => {
  test("is that of happening; what happened together stays in the order of writing", () => {
    const file = ["10:00", "09:00", "10:00", "09:30"].reduce(
      (before, clock, i) => given(before, dose(i), clock),
      openedCase(),
    );
    const { facts } = standing(file.entries);
    expect(ofKind(facts, "dose").map(({ entry }) => entry.ml)).toEqual([1, 3, 0, 2]);
    expect(lastOf(facts, "dose")?.entry.ml).toBe(2);
    expect(lastOf(facts, "act")).toBeUndefined();
  });

  test("of writing is kept whatever was corrected", () => {
    const anyDraft = fc.oneof(
      fc.integer({ min: 0, max: 900 }).map(dose),
      fc.integer({ min: 1, max: 9 }).map((n) => strike(`e${n}`)),
      fc
        .record({ n: fc.integer({ min: 1, max: 9 }), later: fc.integer({ min: -60, max: 60 }) })
        .map(({ n, later }) =>
          amend(`e${n}`, { at: new Date(at("08:00").ms + minutes(later)).toISOString() }),
        ),
    );
    fc.assert(
      fc.property(fc.array(anyDraft, { maxLength: 12, size: "max" }), (drafts) => {
        const entries = entriesOf(...drafts);
        const { facts, written } = standing(entries);
        expect(written.map(({ logged }) => logged)).toEqual(entries);
        expect(facts.length).toBe(written.filter(({ struck }) => !struck).length);
        const times = facts.map((fact) => fact.at);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
      }),
    );
  });
});

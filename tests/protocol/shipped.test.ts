/** The two protocols that come with the program. */
import { describe, expect, test } from "vitest";
import { checkProtocolText } from "../../src/protocol/check.ts";
import { GAS_FIELDS, READING_FIELDS } from "../../src/protocol/fields.ts";
import { crystalloidPart, SHIPPED_NAMES, solutionOf } from "../../src/protocol/protocol.ts";
import { protocolSchema } from "../../src/protocol/protocol-schema.ts";
import { isShipped, SHIPPED } from "../../src/protocol/shipped.ts";
import { GAS_VALUES, READINGS } from "../../src/record/quantities.ts";
import { ROUTES } from "../../src/record/routes.ts";

const repeated = (words: readonly string[]) => words.filter((word, i) => words.indexOf(word) < i);

describe.each(SHIPPED.map((protocol) => [protocol.name, protocol] as const))(
  "the %s protocol",
  (_, protocol) => {
    test("is valid as a file, and nothing is to be said about it", () => {
      expect(checkProtocolText(JSON.stringify(protocol))).toEqual({
        ok: true,
        value: protocol,
        warnings: [],
      });
    });

    test("has its settings in the order in which a case keeps them, so that it is known again", () => {
      expect(JSON.stringify(protocolSchema.parse(protocol))).toBe(JSON.stringify(protocol));
      expect(isShipped(JSON.parse(JSON.stringify(protocol)))).toBe(true);
      expect(isShipped({ ...protocol, usualSolution: "none" })).toBe(false);
    });

    test("gives every letter one meaning", () => {
      for (const list of [protocol.marks, protocol.fluidsIn, protocol.fluidsOut, protocol.checklists]) {
        expect(repeated(list.map(({ letter }) => letter))).toEqual([]);
        expect(repeated(list.map(({ id }) => id))).toEqual([]);
      }
      for (const { ways = [] } of protocol.marks)
        expect(repeated(ways.map(({ letter }) => letter))).toEqual([]);
    });

    test("asks only for what the record can keep", () => {
      for (const name of protocol.readingFields) expect(READINGS).toHaveProperty(name);
      for (const name of protocol.gasFields) expect(GAS_VALUES).toHaveProperty(name);
      expect(protocol.routes?.map(({ id }) => id)).toEqual([...ROUTES]);
    });

    test("knows the spans a perfusionist logs, each by one letter", () => {
      const spans = protocol.marks.filter(({ sort }) => sort === "span");
      expect(Object.fromEntries(spans.map(({ id, letter }) => [letter, id]))).toEqual({
        s: "suckers",
        v: "vent",
        l: "ventilation",
        k: "vacuum",
        p: "pacing",
        a: "circulatory-arrest",
        c: "cerebral-perfusion",
        u: "ultrafiltration",
        x: "partial-clamp",
      });
    });

    test("asks for the unit number and a second person where donated blood is given", () => {
      const donated = protocol.fluidsIn.filter(({ askUnitNumber }) => askUnitNumber).map(({ id }) => id);
      expect(donated).toEqual(["red-cells", "whole-blood", "plasma", "platelets"]);
      expect(
        protocol.fluidsIn.every(
          ({ sort, haematocrit }) => (sort === "blood") === (haematocrit !== undefined),
        ),
      ).toBe(true);
    });

    test("points out open items on going on, on coming off and at closing", () => {
      expect(protocol.checklists.map(({ id, remindAt }) => [id, remindAt])).toEqual([
        ["sign-in", "bypass-on"],
        ["time-out", "bypass-on"],
        ["before-bypass", "bypass-on"],
        ["before-coming-off", "bypass-off"],
        ["after-bypass", "closing"],
        ["sign-out", "closing"],
      ]);
    });

    test("plans no dose of any drug: that is for the unit and its doctors", () => {
      expect(protocol.drugs.filter(({ usualDose }) => usualDose !== undefined)).toEqual([]);
    });

    test("keeps every item of a checklist short enough for a line of 80", () => {
      for (const { items } of protocol.checklists) {
        for (const { text } of items) expect(text.length, text).toBeLessThanOrEqual(60);
      }
    });
  },
);

test("4:1 is one fifth crystalloid and 1:4 is four fifths: the same digits, the other way round", () => {
  const [adult] = SHIPPED;
  const part = (id: string) => crystalloidPart(solutionOf(adult as (typeof SHIPPED)[number], id) as never);
  expect(part("blood-4-1")).toBe(0.2);
  expect(part("one-to-four")).toBe(0.8);
  expect(part("blood-8-1")).toBeCloseTo(1 / 9, 12);
  expect(part("crystalloid")).toBe(1);
});

test("adults usually have 4:1 blood, children 1:4", () => {
  expect(SHIPPED.map(({ name }) => name)).toEqual(SHIPPED_NAMES);
  expect(SHIPPED.map(({ name, usualSolution }) => [name, usualSolution])).toEqual([
    ["adult", "blood-4-1"],
    ["paediatric", "one-to-four"],
  ]);
});

test("the names a form may ask for are the names of the record's quantities", () => {
  expect([...READING_FIELDS]).toEqual(Object.keys(READINGS));
  expect([...GAS_FIELDS]).toEqual(Object.keys(GAS_VALUES));
});

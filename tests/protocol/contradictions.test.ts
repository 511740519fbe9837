/** Values that are each allowed and together cannot be meant. */
import { describe, expect, test } from "vitest";
import { edited, sentencesFor } from "./edited.ts";

describe("limits against each other", () => {
  test.each([
    [
      ["watch", "meanPressure"],
      { low: 80, high: 50 },
      "watch · meanPressure · low: the low limit lies above the high one; change them over, or put the wrong one right.",
    ],
    [
      ["coagulation", "actForCannulation", "value"],
      500,
      "coagulation · actForCannulation · value: the ACT asked for before cannulation lies above the one asked for before bypass (500 against 480); put the wrong one of the two right.",
    ],
    [
      ["coagulation", "protamineCap", "value"],
      0.8,
      "coagulation · protamineRatio · value: the protamine ratio lies above its own cap (1 against 0.8); put the wrong one of the two right.",
    ],
    [
      ["temperature", "warmingGradientWarm", "value"],
      12,
      "temperature · warmingGradientWarm · value: the gradient for a warm outlet is wider than the one for a cold outlet (12 against 10); put the wrong one of the two right.",
    ],
    [
      ["temperature", "warmFrom", "value"],
      37,
      "temperature · warmFrom · value: the narrower gradient would begin at or above the outlet limit (37 against 37); put the wrong one of the two right.",
    ],
    [
      ["solutions", 0, "first"],
      { fixed: { value: 1000 }, ceiling: { value: 800 } },
      "solutions 1 · first · ceiling · value: the ceiling of 800 mL lies below the fixed dose of 1000 mL; put one of the two right, or take the ceiling out.",
    ],
    [
      ["solutions", 0, "first"],
      { fixed: { value: 1000 }, perKg: { value: 20 } },
      "solutions 1 · first: a planned dose is either perKg or fixed, one of the two; keep the one that your unit goes by.",
    ],
    [
      ["solutions", 0],
      { id: "blood-4-1", name: "nothing", blood: 0, crystalloid: 0 },
      "solutions 1: it has neither blood nor crystalloid; write its parts, 4 and 1 for 4:1 blood to crystalloid.",
    ],
    [
      ["body", "fullFlowBy"],
      "weight",
      'body · fullFlowBy: full flow is to follow the weight, but there is no table flowByWeight; add the table, or write "index".',
    ],
    [
      ["body", "bloodVolumeBands"],
      [
        { upTo: 40, value: 70 },
        { upTo: 10, value: 85 },
      ],
      "body · bloodVolumeBands 1 · upTo: the steps of a table rise, and only the last may be open (null); put the steps in rising order.",
    ],
    [
      ["body", "bloodVolumeBands"],
      [
        { upTo: null, value: 70 },
        { upTo: 10, value: 85 },
      ],
      "body · bloodVolumeBands 1 · upTo: the steps of a table rise, and only the last may be open (null); put the steps in rising order.",
    ],
  ] as const)("%j as %j", (path, value, sentence) => {
    expect(sentencesFor(edited([...path], value))).toEqual([sentence]);
  });

  test.each([
    ["one ACT for cannulation and bypass", ["coagulation", "actForCannulation", "value"], 480],
    ["a cap at the ratio", ["coagulation", "protamineCap", "value"], 1],
    ["one gradient, warm or cold", ["temperature", "warmingGradientWarm", "value"], 10],
    ["a single pressure as both limits", ["watch", "meanPressure"], { low: 65, high: 65 }],
    [
      "a ceiling at the fixed dose",
      ["solutions", 0, "first"],
      { fixed: { value: 800 }, ceiling: { value: 800 } },
    ],
  ] as const)("%s is no contradiction", (_, path, value) => {
    expect(sentencesFor(edited([...path], value))).toEqual([]);
  });

  test("a haematocrit floor at that of packed cells could never be reached", () => {
    const text = edited(["watch", "haematocritFloor", "value"], 45).replace(
      '"packedCellHaematocrit":{"value":60',
      '"packedCellHaematocrit":{"value":45',
    );
    expect(sentencesFor(text)).toEqual([
      "watch · haematocritFloor · value: the haematocrit floor is not below that of packed cells, so none could reach it (45 against 45); put the wrong one of the two right.",
    ]);
  });
});

describe("one letter, one name, one key", () => {
  test.each([
    [
      ["marks", 4, "letter"],
      "1",
      'marks 5 · letter: the letter "1" is used twice, first by number 1 of the list; give one of the two another letter.',
    ],
    [
      ["fluidsOut", 2, "letter"],
      "s",
      'fluidsOut 3 · letter: the letter "s" is used twice, first by number 2 of the list; give one of the two another letter.',
    ],
    [
      ["checklists", 1, "letter"],
      "1",
      'checklists 2 · letter: the letter "1" is used twice, first by number 1 of the list; give one of the two another letter.',
    ],
    [
      ["drugs", 3, "id"],
      "adrenaline",
      'drugs 4 · id: the id "adrenaline" is used twice, first by number 1 of the list; give one of the two another id.',
    ],
    [
      ["keys"],
      { dose: "k", level: "k" },
      'keys · level: the key "k" already stands for "dose"; choose another key.',
    ],
    [["readingFields", 1], "flow", 'readingFields 2: "flow" is asked for twice; take one of the two out.'],
    [
      ["marks", 0, "id"],
      "clamp",
      'marks 1 · id: "clamp" has a key of its own (x); take it out of this list.',
    ],
    [
      ["drugs", 0, "id"],
      "heparin",
      'drugs 1 · id: "heparin" has a key of its own (h); take it out of this list.',
    ],
    [
      ["fluidsOut", 0, "id"],
      "urine",
      'fluidsOut 1 · id: "urine" has a key of its own (u); take it out of this list.',
    ],
    [
      ["marks", 0, "ways"],
      [{ letter: "a", id: "aloud", name: "aloud" }],
      'marks 1 · ways: a moment is not done in ways; take them out, or write "span" as its sort.',
    ],
  ] as const)("%j as %j", (path, value, sentence) => {
    expect(sentencesFor(edited([...path], value))).toEqual([sentence]);
  });

  test("two ways of one span may not share their letter", () => {
    const ways = [
      { letter: "a", id: "antegrade", name: "antegrade" },
      { letter: "a", id: "axillary", name: "axillary" },
    ];
    const marks = [{ letter: "c", id: "cerebral-perfusion", name: "cerebral perfusion", sort: "span", ways }];
    expect(sentencesFor(edited(["marks"], marks))).toEqual([
      'marks 1 · ways 2 · letter: the letter "a" is used twice, first by number 1 of the list; give one of the two another letter.',
    ]);
  });
});

describe("names that name nothing", () => {
  test.each([
    [
      ["usualSolution"],
      "blood-41",
      'usualSolution: no solution of this protocol has the id "blood-41"; write "blood-4-1".',
    ],
    [
      ["usualSolution"],
      "cold",
      'usualSolution: no solution of this protocol has the id "cold"; choose from blood-4-1, blood-8-1, one-to-four, crystalloid.',
    ],
    [
      ["circuit", "prime", 0, "fluid"],
      "cristalloid",
      'circuit · prime 1 · fluid: no fluid of this protocol has the id "cristalloid"; write "crystalloid".',
    ],
    [
      ["readingFields", 0],
      "flows",
      'readingFields 1: nothing the record measures is called "flows"; write "flow".',
    ],
    [["drugs", 0, "unit"], "mcg", 'drugs 1 · unit: "mcg" is not a UCUM unit; write "ug".'],
    [["drugs", 0, "unit"], "IU", 'drugs 1 · unit: "IU" is not a UCUM unit; write "[IU]".'],
  ] as const)("%j as %j", (path, value, sentence) => {
    expect(sentencesFor(edited([...path], value))).toEqual([sentence]);
  });
});

/** What is said about a protocol file that is not right: one sentence each, with its place and a way out. */
import { describe, expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { checkProtocolText, LONGEST } from "../../src/protocol/check.ts";
import { edited, faultsIn, sentencesFor } from "./edited.ts";

describe("the file as a whole", () => {
  test.each([
    ["an empty file", "", "the file is empty; start from a copy of a shipped protocol."],
    ["a blank file", " \n\t ", "the file is empty; start from a copy of a shipped protocol."],
    ["a list", "[]", "the file is JSON but not a protocol; start from a copy of a shipped protocol."],
    ["a number", "7", "the file is JSON but not a protocol; start from a copy of a shipped protocol."],
    [
      "a file without format",
      "{}",
      'the file has no "format", so it is not a protocol of ours; write "format": "pumpside-protocol" if it is one.',
    ],
    [
      "a case",
      edited(["format"], "pumpside-case"),
      'the file calls itself "pumpside-case", so it is not a protocol of ours; write "format": "pumpside-protocol" if it is one.',
    ],
    [
      "a newer version",
      edited(["version"], 2),
      "the protocol has file version 2, and this program reads up to 1; open it with the newer program it was made for.",
    ],
    ["a version as text", edited(["version"], "1"), 'version: "1" is not known here; write 1.'],
  ])("%s", (_, text, sentence) => {
    expect(sentencesFor(text)).toEqual([sentence]);
  });

  test("10 MB are refused for their length alone", () => {
    const text = `{"format":"pumpside-protocol",${" ".repeat(10_000_000)}`;
    expect(sentencesFor(text)).toEqual([
      "the file is larger than 1 MB; start from a copy of a shipped protocol.",
    ]);
  });

  test("a file of just the longest length is read", () => {
    const text = JSON.stringify(adultProtocol);
    expect(checkProtocolText(text.padEnd(LONGEST)).ok).toBe(true);
  });

  test("the mark that some editors put before the first character does no harm", () => {
    expect(checkProtocolText(`\ufeff${JSON.stringify(adultProtocol)}`).ok).toBe(true);
  });
});

describe("values", () => {
  test.each([
    [
      ["coagulation", "heparinPerKg", "value"],
      "400",
      'coagulation · heparinPerKg · value: the number "400" stands between quotation marks; write 400 without them.',
    ],
    [
      ["coagulation", "heparinPerKg", "value"],
      "2,4",
      'coagulation · heparinPerKg · value: the number "2,4" stands between quotation marks; write 2.4 without them.',
    ],
    [
      ["coagulation", "heparinPerKg", "value"],
      "a lot",
      'coagulation · heparinPerKg · value: the text "a lot" stands where a number belongs; write a number between 50 and 1000 IU/kg.',
    ],
    [
      ["coagulation", "heparinPerKg", "value"],
      4,
      "coagulation · heparinPerKg · value: 4 is too low; write a number between 50 and 1000 IU/kg.",
    ],
    [
      ["solutions", 1, "interval", "value"],
      900,
      "solutions 2 · interval · value: 900 is too high; write a number between 1 and 300 min.",
    ],
    [
      ["solutions", 1, "interval"],
      20,
      'solutions 2 · interval: 20 stands here; write {"value": n} with a number between 1 and 300 min for n.',
    ],
    [
      ["body", "flowIndex"],
      undefined,
      'body · flowIndex: it is missing: full flow by body surface at normal temperature; write {"value": n} with a number between 1 and 4 L/min/m² for n.',
    ],
    [["solutions"], {}, "solutions: a group in curly brackets stands here; write a list in square brackets."],
    [["solutions"], [], "solutions: the list is too short; give it at least 1."],
    [["name"], "", "name: the text is empty; write something, or take the line out."],
    [["drugs", 0, "unit"], "", "drugs 1 · unit: the text is empty; write something, or take the line out."],
    [
      ["operators"],
      ["AB", "far too long"],
      'operators 2: the text "far too long" is too long; write at most 8 characters.',
    ],
    [
      ["body", "surfaceFormula"],
      "Dubois",
      'body · surfaceFormula: "Dubois" is not known here; write "dubois".',
    ],
    [
      ["body", "surfaceFormula"],
      "boyd",
      'body · surfaceFormula: "boyd" is not known here; choose from dubois, mosteller, haycock.',
    ],
    [
      ["drugs", 0, "id"],
      "Adrenaline 1:10",
      'drugs 1 · id: "Adrenaline 1:10" does not have the right form; write a short name of small letters, digits and hyphens, such as "adrenaline-1-10".',
    ],
    [
      ["marks", 0, "letter"],
      "A",
      'marks 1 · letter: "A" does not have the right form; write one small letter or digit.',
    ],
    [
      ["fluidsIn", 0, "letter"],
      "l",
      'fluidsIn 1 · letter: "l" does not have the right form; write one small letter, not l (which reads as litres) and no digit (part of the volume).',
    ],
    [
      ["solutionCountsAsFluid"],
      "yes",
      'solutionCountsAsFluid: the text "yes" stands here; write true or false, without quotation marks.',
    ],
    [["keys"], { dose: "dd" }, 'keys · dose: the text "dd" is too long; write at most 1 character.'],
    [
      ["name"],
      "adult \u001b[31mred",
      "name: the text holds a character that cannot be shown on one line of a screen; type it again with letters, signs and spaces only.",
    ],
  ] as const)("%j as %j", (path, value, sentence) => {
    const text = edited([...path], value);
    expect(sentencesFor(text)).toEqual(
      path[0] === "solutions" && path.length === 1 ? expect.arrayContaining([sentence]) : [sentence],
    );
  });
});

describe("names", () => {
  test.each([
    [
      ["watch", "meanPresure"],
      { low: 50, high: 70 },
      'watch · meanPresure: "meanPresure" is not a name this program knows; take it out.',
    ],
    [
      ["solutions", 3, "intervall"],
      { value: 120 },
      'solutions 4 · intervall: "intervall" is not a name this program knows; write "interval".',
    ],
    [["shown", "urea"], "mmol/L", 'shown · urea: "urea" is not a name this program knows; take it out.'],
    [
      ["coagulation", "actForBypass", "reason"],
      "so",
      'coagulation · actForBypass · reason: "reason" is not a name this program knows; take it out.',
    ],
  ] as const)("%j is not ours", (path, value, sentence) => {
    expect(sentencesFor(edited([...path], value))).toEqual([sentence]);
  });

  test("a slip in a needed name shows both the gap and what was probably meant", () => {
    const text = JSON.stringify(adultProtocol).replace('"actForBypass"', '"actForBypas"');
    expect(sentencesFor(text)).toEqual([
      'coagulation · actForBypass: it is missing: ACT wanted before and on bypass, met at this value; write {"value": n} with a number between 100 and 1000 s for n.',
      'coagulation · actForBypas: "actForBypas" is not a name this program knows; write "actForBypass".',
    ]);
  });

  test.each(["__proto__", "constructor", "prototype"])("%s is refused wherever it stands", (name) => {
    const text = JSON.stringify(adultProtocol).replace(
      '"flowIndex":{',
      `"flowIndex":{"${name}":{"value":9},`,
    );
    expect(sentencesFor(text)).toEqual([
      `body · flowIndex · ${name}: a protocol may not carry this name; take it out.`,
    ]);
    expect(({} as { value?: number }).value).toBeUndefined();
  });

  test("a name that stands twice is said, although JSON would take the last of the two", () => {
    const text = JSON.stringify(adultProtocol).replace(
      '"outletLimit":',
      '"outletLimit":{"value":38},"outletLimit":',
    );
    expect(sentencesFor(text)).toEqual([
      'temperature · outletLimit: the name "outletLimit" stands twice, and only one of the two would count; keep one of them.',
    ]);
  });
});

test("every fault is listed at once, not the first alone", () => {
  const { coagulation, fluidsIn } = adultProtocol;
  const broken = {
    ...adultProtocol,
    coagulation: { ...coagulation, actForCannulation: { value: 490 }, heparinPerKg: "400" },
    fluidsIn: fluidsIn.map((fluid, i) => (i === 1 ? { ...fluid, letter: "c", sort: "colloids" } : fluid)),
    usualSolution: "blood-4-2",
    gasFields: ["ph", "lactat"],
  };
  expect(faultsIn(JSON.stringify(broken)).map(({ place }) => place)).toEqual([
    "coagulation · heparinPerKg",
    "fluidsIn 2 · sort",
    "fluidsIn 2 · letter",
    "usualSolution",
    "coagulation · actForCannulation · value",
    "gasFields 2",
  ]);
});

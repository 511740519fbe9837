/** Slips of writing in a protocol file, found with their line and column. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readJsonText } from "../../src/protocol/json-text.ts";
import { sentencesFor } from "./edited.ts";

describe("a slip of writing", () => {
  test.each([
    [
      "a comma too many",
      '{\n  "a": 1,\n}',
      "line 3, column 1: a comma stands before a closing bracket; take the comma away.",
    ],
    [
      "a comma too many in a list",
      "[1,]",
      "line 1, column 4: a value is missing before a closing bracket; add it, or take away what asks for it.",
    ],
    [
      "a comma too few",
      '{\n  "a": 1\n  "b": 2\n}',
      "line 3, column 3: a comma or a closing bracket is missing; put a comma between one value and the next.",
    ],
    [
      "a decimal comma",
      '{"a": 2,4}',
      "line 1, column 9: a number stands where a name belongs; write decimals with a point: 2.4.",
    ],
    [
      "a comment",
      '{ // limits\n"a": 1}',
      'line 1, column 3: a comment stands here, and JSON has none; put the words into a "source" or take them out.',
    ],
    [
      "other quotation marks",
      "{'a': 1}",
      'line 1, column 2: the quotation mark is not the plain one; write " before and after.',
    ],
    [
      "a word without quotation marks",
      '{"a": dubois}',
      "line 1, column 7: a value belongs here; put words between quotation marks; numbers, true and false stand alone.",
    ],
    [
      "a name without quotation marks",
      "{a: 1}",
      'line 1, column 2: a name in quotation marks belongs here; write "name": value.',
    ],
    [
      "no colon",
      '{"a" 1}',
      'line 1, column 6: a ":" is missing between a name and its value; write "name": value.',
    ],
    [
      "an open text",
      '{"a": "adult\n}',
      'line 1, column 7: a text is not closed, or holds a line break or a lone backslash; close it with " on the same line.',
    ],
    [
      "a number with a leading nought",
      '{"a": 007}',
      "line 1, column 7: the number is not written as JSON has it; write it plainly: 0.5, 300, -3.",
    ],
    [
      "a number without its nought",
      '{"a": .5}',
      "line 1, column 7: the number is not written as JSON has it; write it plainly: 0.5, 300, -3.",
    ],
    [
      "a file cut short",
      '{"a": [1, 2',
      "line 1, column 12: the text ends before its brackets are closed; complete the file, or take an undamaged copy.",
    ],
    [
      "two files in one",
      "{}\n{}",
      "line 2, column 1: more text follows after the last bracket; take it out.",
    ],
    [
      "the wrong bracket",
      "[1}",
      "line 1, column 3: a comma or a closing bracket is missing; put a comma between one value and the next.",
    ],
    [
      "brackets without end",
      "[".repeat(500_000),
      "line 1, column 21: brackets stand more than 20 deep in one another; start again from a shipped protocol, which needs six.",
    ],
  ])("%s", (_, text, sentence) => {
    expect(sentencesFor(text)).toEqual([sentence]);
  });
});

describe("what JSON allows is read, and nothing else", () => {
  const agrees = (text: string) => {
    const read = readJsonText(text);
    try {
      const value: unknown = JSON.parse(text);
      expect(read).toMatchObject({ ok: true, value });
    } catch {
      expect(read.ok).toBe(false);
    }
  };

  test("any JSON", () => {
    fc.assert(fc.property(fc.json({ maxDepth: 6 }), agrees));
  });

  test("any text", () => {
    fc.assert(fc.property(fc.string({ unit: "binary" }), agrees));
  });

  test("text made of the signs of JSON", () => {
    const sign = fc.constantFrom(
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"',
      "\\",
      "u00e9",
      "-",
      "0",
      "1",
      ".",
      "e",
      "+",
      "true",
      "null",
      " ",
      "\n",
      '"a"',
    );
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 12 }), (signs) => agrees(signs.join(""))),
      { numRuns: 2000 },
    );
  });

  test("JSON with one character changed", () => {
    const changed = fc.tuple(fc.json(), fc.nat(), fc.string({ minLength: 0, maxLength: 2 }));
    fc.assert(
      fc.property(changed, ([json, place, put]) => {
        const at = place % (json.length + 1);
        agrees(json.slice(0, at) + put + json.slice(at + 1));
      }),
      { numRuns: 1000 },
    );
  });

  test("a text that fills the file", () => {
    agrees(JSON.stringify('\\"é'.repeat(200_000)));
  });
});

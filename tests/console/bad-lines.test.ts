/** A line that means nothing is refused in one sentence that ends with what to do. */
import { describe, expect, test } from "vitest";
import { refusal, runAt, typed, typedOn } from "../helpers/typed-case.ts";

/** One sentence: what is wrong, a colon, and what to do. */
const SENTENCE = /^[^\n]+[:,] [^\n]*\b(type|press|pick|add|write|begin|log|starts|lists?)\b[^\n]*\.$/;

const idle = typed(["08:00 u 300"]);
const running = typed(["09:00 x", "09:10 d"]);

test.each([
  ["nothing", [""]],
  ["no stroke", ["?5", "D 300", "é", "1", "\u202e"]],
  ["no entry's stroke", ["/", "? x", "q"]],
  ["bypass and clamp", ["b maybe", "b on off", "x 300", "x onn"]],
  [
    "a dose",
    [
      "d abc",
      "d -5",
      "d 300 400",
      "d 300 r l",
      "d 300++",
      "d +",
      "d 300 x",
      "d 200000",
      "d 300+ 400",
      "d p80 p90",
      "d t90",
      "d p900",
    ],
  ],
  ["a dose so far with none running", ["d 300+", "d 300+ r"]],
  ["heparin", ["h", "h abc", "h 280 g", "h 28000 iu twice", "h -5", "h 2000k", "h 99999999"]],
  ["protamine", ["p", "p much", "p 280 g", "p 5001"]],
  ["ACT", ["a", "a 0", "a 10000", "a 512 min", "a -3", "a five"]],
  ["flow", ["f", "f 2/3", "f 16", "f fast", "f 4.5 mL"]],
  ["temperature", ["t", "t 4", "t 43", "t 32 F", "t warm"]],
  ["volume in", ["v", "v c", "v 500", "v 500 x", "v 500 c r", "v abc c", "v 500 l", "v -500 c"]],
  ["urine", ["u", "u =", "u =abc", "u abc", "u 100 c", "u ==450"]],
  ["other volume out", ["o", "o 400", "o 400 q"]],
  ["returned and level", ["r", "r x", "r 100 c", "l", "l full", "l 200L"]],
  ["moments and spans", ["m", "m ?", "m ss", "m s maybe", "m c x", "m d on", "m 😀", "m suckers"]],
  ["reminders", ["w", "w soon", "w 2000", "w gas 15", "w ok", "w -5"]],
  ["words", ["n", "e", "n ; only a note", "n @10:00"]],
  [
    "drugs",
    [
      "i",
      "i 5 mg",
      "i noradrenaline",
      "i a 5",
      "i x 5",
      "i x 5 spoons",
      "i x 1000001 mg",
      `i ${"x".repeat(61)} 5 mg`,
    ],
  ],
  ["putting right", ["z", "z #99 5", "z #1 5", "z !", "z abc"]],
  [
    "words that every object knows",
    [
      "d constructor",
      "d __proto__",
      "d 300constructor",
      "f constructor",
      "f __proto__",
      "h 5constructor",
      "u 5constructor",
      "i x 5constructor",
      "m constructor",
    ],
  ],
  ["more than a line holds", [`n ${"a".repeat(500)}`]],
])("%s", (_, lines) => {
  for (const line of lines) expect(refusal(idle, line), line).toMatch(SENTENCE);
});

test("a dose that runs asks for its millilitres", () => {
  for (const line of ["d", "d r"])
    expect(refusal(running, line)).toBe(
      "A dose is running: type the millilitres to end it, or 300+ for so far.",
    );
});

describe("a number that can be read in two ways", () => {
  test.each(["h 28,000", "h 28.000", "h 28,000 IU", "v 1,200 c", "u 1.200", "d 1,200", "a 1,512", "w 1,440"])(
    "%s is not taken as a thousandth of what was meant",
    (line) => {
      expect(refusal(idle, line)).toMatch(SENTENCE);
    },
  );

  test("is plain behind litres, and below one", () => {
    expect(typed(["08:00 v 1,250L c", "08:01 l 1.250L", "08:02 v 0,125L c"]).entries.slice(1)).toMatchObject([
      { ml: 1250 },
      { ml: 1250 },
      { ml: 125 },
    ]);
  });

  test.each(["d 1.2l", "d 1.2 l", "d 1,2 L", "d 1 L"])(
    "%s is asked whether it is litres or a route",
    (line) => {
      expect(refusal(idle, line)).toBe(
        `"${line.slice(2)}" could mean litres or the left ostium: type 1200 l, or 1.2L.`,
      );
    },
  );
});

test("a bag that reads less than what was recorded is refused with both numbers", () => {
  expect(refusal(idle, "u =250")).toBe(
    "The bag cannot read 250 mL when 300 mL are recorded already: type new millilitres without =, or put the wrong entry right (z).",
  );
});

test("a bag that reads what was recorded is taken: nothing has come since", () => {
  expect(runAt(typedOn(idle, ["08:30 u =300"]), "09:00").course.balances.urine.value).toBe(300);
});

test("a refusal quotes nothing that a terminal would obey", () => {
  for (const line of [
    "d \x1b[2J",
    "t \u202e32",
    "v 5\u0007 c",
    "i x 5\x9bm",
    "m \u2028",
    "w \x1b]0;title\x07",
  ]) {
    expect(refusal(idle, line), JSON.stringify(line)).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}]/u);
  }
});

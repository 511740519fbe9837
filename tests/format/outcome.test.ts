/** An outcome goes on with its value, or passes its refusal on. */
import { expect, test } from "vitest";
import { lookUp } from "../../src/format/look-up.ts";
import { andThen, type Outcome, refused, taken } from "../../src/format/outcome.ts";

const half = (n: number): Outcome<number> => (n % 2 === 0 ? taken(n / 2) : refused(`${n} is odd.`));

test("the first refusal ends the way", () => {
  expect(andThen(half(12), half)).toEqual({ ok: true, value: 3 });
  expect(andThen(half(6), half)).toEqual({ ok: false, fault: "3 is odd." });
  expect(andThen(half(5), half)).toEqual({ ok: false, fault: "5 is odd." });
});

test("a table of words holds its own words only", () => {
  const letters = { a: 1, b: 2 };
  expect(["a", "c", "constructor", "toString", "__proto__"].map((word) => lookUp(letters, word))).toEqual([
    1,
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});

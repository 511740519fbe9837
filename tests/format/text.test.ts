/** Text made harmless for one line of a terminal, and lists in words. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { harmless, listed } from "../../src/format/text.ts";

describe("harmless text", () => {
  test.each([
    ["a terminal escape", "wipe \x1b[2J it", "wipe [2J it"],
    ["an escape of one byte", "a\x9b31mb", "a 31mb"],
    ["line breaks of all kinds", "one\r\ntwo\u2028three\u0085four", "one two three four"],
    ["a mark that turns the direction of writing", "abc\u202Edef", "abc def"],
    ["a mark that nobody sees", "a\u200Bb\uFEFFc", "a b c"],
    ["half a character", "a\uD83Db", "a b"],
    ["white space at the ends", "  \t one  \u00A0 two ", "one two"],
    ["letters of any script", "Blutkühlung · охлаждение · 冷却 · 🫀", "Blutkühlung · охлаждение · 冷却 · 🫀"],
  ])("%s", (_, text, shown) => {
    expect(harmless(text)).toBe(shown);
  });

  test("of anything is one line that a terminal does not obey, and is harmless already", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const shown = harmless(text);
        expect(shown).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
        expect(harmless(shown)).toBe(shown);
      }),
    );
  });
});

test("a list in words", () => {
  expect([
    listed([]),
    listed(["a"]),
    listed(["a", "b"]),
    listed(["a", "b", "c"]),
    listed(["a", "b"], "or"),
  ]).toEqual(["", "a", "a and b", "a, b and c", "a or b"]);
});

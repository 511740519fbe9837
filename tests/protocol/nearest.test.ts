/** The word that was probably meant. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { editDistance, instead, nearest } from "../../src/protocol/nearest.ts";

test.each([
  ["meanPresure", "meanPressure", 1],
  ["haematokrit", "haematocrit", 1],
  ["flow", "", 4],
  ["Heparin", "heparin", 0],
])("%s and %s are %i letters apart", (one, other, apart) => {
  expect(editDistance(one, other)).toBe(apart);
});

test("a word is as far from another as the other from it, and never further than the longer is long", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 20 }), fc.string({ maxLength: 20 }), (one, other) => {
      expect(editDistance(one, other)).toBe(editDistance(other, one));
      expect(editDistance(one, other)).toBeLessThanOrEqual(Math.max(one.length, other.length));
      expect(editDistance(one, one)).toBe(0);
    }),
  );
});

test("the nearest is offered; what is near to nothing gets the list", () => {
  const known = ["flow", "sweep", "vacuum"];
  expect(nearest("vacum", known)).toBe("vacuum");
  expect(nearest("pressure", known)).toBeUndefined();
  expect(instead("vacum", known)).toBe('write "vacuum"');
  expect(instead("pressure", known)).toBe("choose from flow, sweep, vacuum");
  expect(instead("pressure", [])).toBe("take it out");
});

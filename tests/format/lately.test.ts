// What was made lately is not made again, and is the same as if it were.

import fc from "fast-check";
import { expect, test } from "vitest";
import { lately } from "../../src/format/lately.ts";

test("what was asked for last is made once, and what was asked for long ago anew", () => {
  const asked: number[] = [];
  const double = lately((one: number) => {
    asked.push(one);
    return 2 * one;
  });
  expect([1, 1, 2, 1, 2].map(double)).toEqual([2, 2, 4, 2, 4]);
  expect(asked).toEqual([1, 2]);
  expect([3, 4, 1].map(double)).toEqual([6, 8, 2]);
  expect(asked).toEqual([1, 2, 3, 4, 1]);
});

test("in any order it gives what the function itself gives, also where that is nothing", () => {
  const plain = (one: number) => (one % 3 === 0 ? undefined : { one });
  fc.assert(
    fc.property(fc.array(fc.nat(9)), (asked) => {
      const kept = lately(plain);
      expect(asked.map(kept)).toEqual(asked.map(plain));
    }),
  );
});

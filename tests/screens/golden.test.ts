// Every screen of the console as it was last agreed, at the usual, at the large, and at too small a size.

import { describe, expect, test } from "vitest";
import { frameOf } from "./frame.ts";
import { expectGolden, orphans } from "./golden.ts";
import { SITUATIONS, SMALL } from "./situations.ts";

const FULL = ["80x24", "120x36"];
const TOO_SMALL = ["60x18", "40x10", "20x3"];

const sizeOf = (text: string) => {
  const [columns = 0, rows = 0] = text.split("x").map(Number);
  return { columns, rows };
};

const drawn = Object.entries(SITUATIONS).flatMap(([situation, view]) =>
  [...FULL, ...(SMALL.includes(situation) ? TOO_SMALL : [])].map((size) => ({
    name: `${situation.replaceAll(/[^a-z]+/g, "-")}.${size}`,
    view,
    size: sizeOf(size),
  })),
);

describe("the screen is as it was agreed", () => {
  test.each(drawn)("$name", ({ name, view, size }) => {
    expectGolden(name, frameOf(view, size));
  });
});

test("no golden frame is left of a screen that is no longer drawn", () => {
  expect(orphans(drawn.map(({ name }) => name))).toEqual([]);
});

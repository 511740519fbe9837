// Every golden situation for an old terminal: nothing but ASCII, sign for sign as wide as it was, and no colours of its own.

import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { renderToString } from "ink";
import { createElement } from "react";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { inAscii } from "../../src/format/ascii.ts";
import { LookContext } from "../../src/screens/chart-dots.ts";
import { Screen, type View } from "../../src/screens/Root.tsx";
import { SITUATIONS } from "./situations.ts";

const SIZES = [
  { columns: 80, rows: 24 },
  { columns: 120, rows: 36 },
  { columns: 40, rows: 10 },
];

const drawn = (view: View, size: (typeof SIZES)[number]) =>
  renderToString(createElement(LookContext, { value: "ascii" }, createElement(Screen, { view, size })), {
    columns: size.columns,
  });

describe("in ASCII the screen is as wide as before", () => {
  test.each(Object.entries(SITUATIONS))("%s", (_name, view) => {
    for (const size of SIZES) {
      const before = drawn(view, size);
      const after = inAscii(before, stringWidth);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
      expect(after.replace(/\x1b\[[0-9;]*m/g, "")).toMatch(/^[\x20-\x7e\n]*$/);
      expect(after.split("\n").map((row) => stringWidth(row))).toEqual(
        before.split("\n").map((row) => stringWidth(row)),
      );
    }
  });
});

describe("text in ASCII", () => {
  test("keeps what can be read and marks the rest", () => {
    expect(inAscii("Müller · 37 °C – 1.9 m² × 2 … ▶ 日本 e\u0301", stringWidth)).toBe(
      "Muller * 37 'C - 1.9 m2 x 2 ~ > ???? e",
    );
  });

  test("of any kind is as wide as it was", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        const line = text.replace(/\p{Cc}/gu, "");
        const after = inAscii(line, stringWidth);
        expect(after).toMatch(/^[ -~]*$/);
        expect(stringWidth(after)).toBe(stringWidth(line));
      }),
    );
  });
});

test("the screens use no colours but the sixteen that every terminal has", () => {
  const basic = /^(black|red|green|yellow|blue|magenta|cyan|white|gray|grey)(Bright)?$/;
  const files = readdirSync("src/screens").filter((name) => name.endsWith(".tsx"));
  const used = files.flatMap((name) =>
    [
      ...readFileSync(`src/screens/${name}`, "utf8").matchAll(
        /\b(?:background)?[cC]olor(?:=|: )\{?"([^"]+)"/g,
      ),
    ].map(([, color = ""]) => color),
  );
  expect(used.length).toBeGreaterThan(3);
  expect(used.filter((color) => !basic.test(color))).toEqual([]);
});

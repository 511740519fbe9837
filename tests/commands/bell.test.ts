/** The bell: once for each thing that becomes due, and only for those who asked for it. */
import { describe, expect, test } from "vitest";
import { hangBell } from "../../src/commands/bell.ts";
import { at, typed } from "../helpers/typed-case.ts";

function rungAt(lines: readonly string[], clocks: readonly string[]): string[] {
  let rings = 0;
  const bell = hangBell(() => rings++);
  return clocks.filter((clock) => {
    const before = rings;
    bell(typed(lines), at(clock).ms);
    return rings > before;
  });
}

describe("the bell", () => {
  test("rings when a reminder becomes due, and not again while it stays so", () => {
    expect(rungAt(["09:00 w5 clot"], ["09:04:59", "09:05:00", "09:05:01", "09:30:00"])).toEqual(["09:05:00"]);
  });

  test("is silent about what was overdue before anybody looked", () => {
    expect(rungAt(["09:00 w5 clot"], ["09:10:00", "09:10:01"])).toEqual([]);
  });

  test("rings for each of two", () => {
    const clocks = ["09:04", "09:05", "09:06", "09:07"];
    expect(rungAt(["09:00 w5 clot", "09:00 w7 gas"], clocks)).toEqual(["09:05", "09:07"]);
  });
});

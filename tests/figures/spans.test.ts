/** Spans: when something was on. */
import { describe, expect, test } from "vitest";
import { type Interval, intervalsOf, isOnAt } from "../../src/figures/spans.ts";
import { at, minutes, runAt, typed } from "../helpers/typed-case.ts";

/** The intervals of a span as clock times, the way in brackets, open ones without an end. */
function intervals(what: string, lines: readonly string[]): string[] {
  const clock = (ms: number) => new Date(ms + minutes(60)).toISOString().slice(11, 16);
  const text = ({ from, to, way }: Interval) =>
    `${clock(from)}–${to === null ? "" : clock(to)}${way ? ` (${way})` : ""}`;
  return intervalsOf(runAt(typed(lines), "12:00").course.spans, what).map(text);
}

describe("bypass", () => {
  test.each<[string, string[], string[]]>([
    ["goes on and off", ["09:00 b", "10:00 b"], ["09:00–10:00"]],
    ["goes on for a second run", ["09:00 b", "10:00 b", "10:20 b"], ["09:00–10:00", "10:20–"]],
    ["on twice is on once", ["09:00 b", "09:10 b on", "10:00 b"], ["09:00–10:00"]],
    ["off without on is nothing", ["09:00 b off"], []],
    ["off twice ends at the first", ["09:00 b", "10:00 b", "10:05 b off"], ["09:00–10:00"]],
    ["without an end is still on", ["09:00 b"], ["09:00–"]],
    ["written late starts when it started", ["09:20 b @9:00", "10:00 b"], ["09:00–10:00"]],
    ["put right in time moves its start", ["09:20 b", "09:30 z @9:15", "10:00 b"], ["09:15–10:00"]],
    ["with its end struck out is still on", ["09:00 b", "10:00 b", "10:01 z! not off"], ["09:00–"]],
    ["with its start struck out was never on", ["09:00 b", "10:00 b", "10:01 z #2 ! slip"], []],
    [
      "with an end put right to before its start is still on",
      ["09:00 b", "10:00 b", "10:01 z @8:00"],
      ["09:00–"],
    ],
  ])("%s", (_, lines, expected) => {
    expect(intervals("bypass", lines)).toEqual(expected);
  });
});

test("spans of different things run beside each other", () => {
  const lines = ["09:00 b", "09:10 x", "09:20 m s", "09:40 x", "09:50 m s", "10:00 b"];
  expect(["bypass", "clamp", "suckers"].map((what) => intervals(what, lines))).toEqual([
    ["09:00–10:00"],
    ["09:10–09:40"],
    ["09:20–09:50"],
  ]);
});

describe("a span with ways", () => {
  test.each<[string, string[], string[]]>([
    [
      "changes from one way to the other without a gap",
      ["09:00 m ca", "09:10 m cr", "09:20 m c"],
      ["09:00–09:10 (antegrade)", "09:10–09:20 (retrograde)"],
    ],
    ["goes on in the way it has when it is on again", ["09:00 m ca", "09:10 m c on"], ["09:00– (antegrade)"]],
    ["may get its way later", ["09:00 m c", "09:10 m cr"], ["09:00–09:10", "09:10– (retrograde)"]],
  ])("%s", (_, lines, expected) => {
    expect(intervals("cerebral-perfusion", lines)).toEqual(expected);
  });
});

test("an interval holds its first moment and not its last", () => {
  const list = intervalsOf(runAt(typed(["09:00 b", "10:00 b"]), "12:00").course.spans, "bypass");
  expect(["08:59:59", "09:00", "09:59:59", "10:00"].map((clock) => isOnAt(list, at(clock).ms))).toEqual([
    false,
    true,
    true,
    false,
  ]);
});

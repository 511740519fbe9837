/** When the next dose of arrest solution is due. */
import { describe, expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { minutes, openedCase, runAt, typed } from "../helpers/typed-case.ts";

const nine = runAt(openedCase(), "09:00").now;

/** Since the last dose and due, in minutes, the due moment after 09:00; and why. */
function next(lines: readonly string[], clock: string, protocol?: Protocol) {
  const { since, due, because } = runAt(typed(lines, protocol), clock).nextDose;
  return [
    since === null ? null : since / minutes(1),
    due === null ? null : (due - nine) / minutes(1),
    because,
  ];
}

const clamped = ["09:00 x"];

describe("a dose is due", () => {
  test.each<[string, string[], string, [number | null, number | null, string]]>([
    ["at no time before the first", [], "09:05", [null, null, "no dose yet"]],
    ["at no time while one runs", ["09:05 d"], "09:07", [null, null, "a dose is running"]],
    [
      "an interval after the end of the last, not after its start",
      ["09:05 d", "09:08 d 900"],
      "09:10",
      [2, 28, "20 min after the last dose ended"],
    ],
    [
      "an interval after a whole dose",
      ["09:05 d 900"],
      "09:31",
      [26, 25, "20 min after the last dose ended"],
    ],
    [
      "when the surgeon said, by w, in place of the interval",
      ["09:05 d 900", "09:10 w 30"],
      "09:12",
      [7, 40, "time given by order"],
    ],
    [
      "when the surgeon said last",
      ["09:05 d 900", "09:10 w 30", "09:12 w 10"],
      "09:12",
      [7, 22, "time given by order"],
    ],
    [
      "when w was given while the dose ran",
      ["09:05 d", "09:06 w 25", "09:08 d 900"],
      "09:10",
      [2, 31, "time given by order"],
    ],
    ["by w before the first dose too", ["09:01 w 4"], "09:02", [null, 5, "time given by order"]],
    [
      "by its interval again once a dose came after w",
      ["09:05 d 900", "09:10 w 30", "09:20 d 300"],
      "09:21",
      [1, 40, "20 min after the last dose ended"],
    ],
    [
      "whatever a reminder for something else says",
      ["09:05 d 900", "09:10 w 30 gas"],
      "09:12",
      [7, 25, "20 min after the last dose ended"],
    ],
    ["at no time once the clamp is off", ["09:05 d 900", "09:15 x"], "09:20", [15, null, "no clamp is on"]],
    [
      "at no time under a second clamp before its first dose",
      ["09:05 d 900", "09:15 x", "09:20 x"],
      "09:40",
      [35, null, "none since clamp on"],
    ],
    [
      "when a struck order no longer stands",
      ["09:05 d 900", "09:10 w 30", "09:11 z ! not said"],
      "09:12",
      [7, 25, "20 min after the last dose ended"],
    ],
  ])("%s", (_, lines, clock, expected) => {
    expect(next([...clamped, ...lines], clock)).toEqual(expected);
  });

  test("at no time where the solution is meant to last", () => {
    const protocol = { ...adultProtocol, usualSolution: "crystalloid" };
    expect(next([...clamped, "09:05 d 1500"], "09:30", protocol)).toEqual([
      25,
      null,
      "this solution has no interval",
    ]);
  });

  test("after ninety minutes with a solution of that interval", () => {
    const protocol = { ...adultProtocol, usualSolution: "one-to-four" };
    expect(next([...clamped, "09:05 d 1000"], "09:30", protocol).slice(0, 2)).toEqual([25, 95]);
  });
});

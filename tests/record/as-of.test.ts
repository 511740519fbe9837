/** The record as anybody could have read it at an earlier moment. */
import { expect, test } from "vitest";
import { asOf } from "../../src/record/as-of.ts";
import { at, runAt, typed } from "../helpers/typed-case.ts";

const file = typed(["09:00 b", "09:10 d 300", "09:20 z 350", "09:30 u 100 @9:05"]);
const knownAt = (clock: string) => runAt(asOf(file, at(clock).ms), clock).course.balances;

test("what was put right later still read as it was first written", () => {
  expect(["09:09", "09:10", "09:19", "09:20"].map((clock) => knownAt(clock).arrestGiven.value)).toEqual([
    null,
    300,
    300,
    350,
  ]);
});

test("what was told later was not known when it happened", () => {
  expect([knownAt("09:29").urine.value, knownAt("09:30").urine.value]).toEqual([null, 100]);
});

test("of now is the record itself", () => {
  expect(asOf(file, at("12:00").ms)).toBe(file);
});

/** Reminders that are still open. */
import { expect, test } from "vitest";
import { runAt, typed } from "../helpers/typed-case.ts";

const open = (lines: readonly string[]) =>
  runAt(typed(lines), "10:00").course.reminders.map(({ entry }) => entry.text);

test("reminders stand by when they are due, without those for the next dose", () => {
  expect(open(["08:50 x", "09:00 w 30 gas", "09:01 w 10 ACT", "09:02 w 20"])).toEqual(["ACT", "gas"]);
});

test("without a clamp no dose is waited for, and its reminder stands among the others", () => {
  expect(open(["09:00 w 30 gas", "09:02 w 20"])).toEqual(["next arrest dose", "gas"]);
});

test("+5 puts off the one that is due first", () => {
  expect(open(["09:00 w 30 gas", "09:01 w 10 ACT", "09:12 w +40"])).toEqual(["gas", "ACT"]);
});

test("ok ends the one that is due first", () => {
  expect(open(["09:00 w 30 gas", "09:01 w 10 ACT", "09:12 w ok"])).toEqual(["gas"]);
  expect(open(["09:00 w 30 gas", "09:01 w 10 ACT", "09:12 w ok", "09:13 w ok"])).toEqual([]);
});

test("one put right is due that many minutes after it was asked for", () => {
  const file = typed(["09:00 w 30 gas", "09:05 z 45"]);
  expect(file.entries.at(-1)).toMatchObject({ changes: { dueAt: "2026-03-04T09:45:00.000+01:00" } });
});

test("one struck out is open no more, and one wrongly ended is open again", () => {
  expect(open(["09:00 w 30 gas", "09:05 z ! not needed"])).toEqual([]);
  expect(open(["09:00 w 30 gas", "09:05 w ok", "09:06 z ! not done yet"])).toEqual(["gas"]);
});

/** What is due, the most overdue first. */
import { describe, expect, test } from "vitest";
import { dueOf } from "../../src/figures/due.ts";
import { at, runAt } from "../helpers/typed-case.ts";
import { gas, readings, type Step, told } from "./told-case.ts";

/** What is due and in how many minutes. */
const due = (clock: string, ...steps: Step[]) =>
  dueOf(runAt(told(steps), clock)).map(({ what, due: moment }) => [what, (moment - at(clock).ms) / 60_000]);

const only = (what: string, clock: string, ...steps: Step[]) =>
  due(clock, ...steps).flatMap(([name, minutes]) => (name === what ? [minutes] : []));

test("before bypass nothing is due but what was asked for", () => {
  expect(due("08:30", "08:20 a 118")).toEqual([]);
  expect(due("08:30", "08:20 w 15 call the ward")).toEqual([["reminder", 5]]);
});

test("on bypass readings, gas and ACT are due at the protocol's intervals", () => {
  expect(due("09:00", "08:50 a 500", "09:00 b")).toEqual([
    ["readings", 15],
    ["act", 20],
    ["gas", 30],
  ]);
});

describe("after bypass", () => {
  test("none of them is due", () => {
    expect(due("10:00", "08:50 a 500", "09:00 b", "09:50 b")).toEqual([]);
  });

  test("back on, readings and gas are due from there", () => {
    const steps = [gas("09:40", { ph: 7.4 }), "09:50 b", "10:00 b"];
    expect(only("gas", "10:00", "08:50 a 500", "09:00 b", ...steps)).toEqual([30]);
  });
});

test("an ACT is due from the last one, and at once where there is none", () => {
  expect(only("act", "09:20", "08:50 a 500", "09:00 b", "09:10 a 490")).toEqual([20]);
  expect(only("act", "09:10", "09:00 b")).toEqual([-10]);
});

test("readings and gas are due from the last of them on bypass", () => {
  const steps = ["09:00 b", readings("09:10", { flow: 4.5 }), gas("09:12", { ph: 7.4 }, "venous")];
  expect(only("readings", "09:20", ...steps)).toEqual([5]);
  expect(only("gas", "09:20", ...steps)).toEqual([22]);
});

describe("a dose", () => {
  const arrested = ["08:50 a 500", "09:00 b", "09:05 x", "09:10 d 700"];

  test("is due at the solution's interval while a clamp is on", () => {
    expect(only("dose", "09:20", ...arrested)).toEqual([10]);
    expect(only("dose", "09:20", ...arrested, "09:15 x")).toEqual([]);
  });

  test("is due at the time given by w instead, and is not a reminder besides", () => {
    const all = due("09:20", ...arrested, "09:10 w 30");
    expect(all.filter(([what]) => what === "dose" || what === "reminder")).toEqual([["dose", 20]]);
  });
});

test("the most overdue comes first, whatever it is", () => {
  const steps = ["08:30 a 500", "09:00 b", "09:01 w 2 blood gas", "09:05 x", "09:06 d 700"] as const;
  expect(due("09:30", ...steps).map(([what]) => what)).toEqual([
    "act",
    "reminder",
    "readings",
    "dose",
    "gas",
  ]);
});

test("a reminder names its entry, so that it can be ended", () => {
  const [first] = dueOf(runAt(told(["08:20 w 15 call the ward"]), "08:30"));
  expect(first).toMatchObject({ text: "call the ward", target: "e2" });
});

/** Doses of arrest solution, put together from what was said of them. */
import { describe, expect, test } from "vitest";
import { givenMl } from "../../src/figures/doses.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { given, minutes, openedCase, runAt, typed, typedOn } from "../helpers/typed-case.ts";

/** Doses as `start–end mL route`, times in minutes after 09:00. */
const doses = (lines: readonly string[], protocol?: Protocol): string[] =>
  runAt(typed(lines, protocol), "12:00").course.doses.map(({ start, end, ml, route }) => {
    const minute = (ms: number | null) => (ms === null ? "" : ms / minutes(1) - nine);
    return `${minute(start)}–${minute(end)} ${ml ?? "?"}${route ? ` ${route}` : ""}`;
  });
const nine = runAt(openedCase(), "09:00").now / minutes(1);

describe("a dose", () => {
  test.each<[string, string[], string[]]>([
    ["runs from its start to its end", ["09:10 d", "09:13 d 900"], ["10–13 900"]],
    ["runs without a volume until somebody says one", ["09:10 d"], ["10– ?"]],
    ["has its running total so far", ["09:10 d", "09:11 d 300+", "09:12 d 600+"], ["10– 600"]],
    [
      "ends with its total, whatever was said so far",
      ["09:10 d", "09:11 d 300+", "09:12 d 280"],
      ["10–12 280"],
    ],
    ["told as a whole starts and ends at once", ["09:10 d 300 r"], ["10–10 300 right-ostium"]],
    ["keeps the route it was started by", ["09:10 d a", "09:13 d 900"], ["10–13 900 root"]],
    ["takes the route that is said at its end", ["09:10 d", "09:13 d 900 s"], ["10–13 900 coronary-sinus"]],
    [
      "with its start struck out still counts",
      ["09:10 d", "09:13 d 900", "09:14 z #2 ! slip"],
      ["13–13 900"],
    ],
    ["with its end struck out runs again", ["09:10 d", "09:13 d 900", "09:14 z! slip"], ["10– ?"]],
    ["with a running total alone is running", ["09:10 d", "09:11 d 300+", "09:12 z #2 ! slip"], ["11– 300"]],
    ["with its end back-dated is shorter", ["09:10 d", "09:13 d 900 @-1"], ["10–12 900"]],
    [
      "told as a whole between others stays its own",
      ["09:10 d 600", "09:30 d 300", "09:31 d 100 @9:20"],
      ["10–10 600", "20–20 100", "30–30 300"],
    ],
  ])("%s", (_, lines, expected) => {
    expect(doses(lines)).toEqual(expected);
  });

  test("that starts while another runs ends that one", () => {
    const file = given(typed(["09:10 d a"]), { kind: "dose", state: "start", route: "graft" }, "09:14");
    const read = runAt(file, "09:20").course.doses.map(({ start, end, route }) => [
      start / minutes(1) - nine,
      end === null ? null : end / minutes(1) - nine,
      route,
    ]);
    expect(read).toEqual([
      [10, 14, "root"],
      [14, null, "graft"],
    ]);
  });
});

describe("the millilitres given", () => {
  const lines = ["09:10 d 900 a", "09:30 d 200 l", "09:31 d 150 r", "09:50 d 300 a"];

  test("are those of all doses, and of each route", () => {
    const read = runAt(typed(lines), "10:00").course.doses;
    expect([
      givenMl(read),
      givenMl(read, "root"),
      givenMl(read, "right-ostium"),
      givenMl(read, "graft"),
    ]).toEqual([1550, 1200, 150, 0]);
  });

  test("of a dose that runs count as far as they are said", () => {
    const { arrestGiven } = runAt(typed(["09:10 d", "09:11 d 300+"]), "09:12").course.balances;
    expect(arrestGiven.value).toBe(300);
    const running = runAt(typed(["09:10 d 900", "09:30 d"]), "09:32").course.balances;
    expect(running.arrestGiven).toMatchObject({ value: 900, working: "900 + ? (1 without a volume yet)" });
  });

  test("are not known, rather than nought, while nobody has said any", () => {
    const { arrestGiven, arrestCrystalloid, fluidIn } = runAt(typed(["09:10 d"]), "09:12").course.balances;
    expect(arrestGiven).toMatchObject({ value: null, working: "no volume said yet" });
    expect([arrestCrystalloid.value, fluidIn.value]).toEqual([null, null]);
  });
});

describe("the crystalloid part", () => {
  const withSolution = (id: string): Protocol => ({ ...adultProtocol, usualSolution: id });
  const crystalloid = (protocol: Protocol, ...lines: string[]) =>
    runAt(typed(lines, protocol), "12:00").course.balances.arrestCrystalloid.value;

  test("is a fifth of 4:1 blood, four fifths of 1:4, a ninth of 8:1 and all of crystalloid alone", () => {
    const solutions = ["blood-4-1", "one-to-four", "blood-8-1", "crystalloid"];
    expect(solutions.map((id) => crystalloid(withSolution(id), "09:10 d 900"))).toEqual([180, 720, 100, 900]);
  });

  test("follows the solution of the plan", () => {
    const file = given(openedCase(), { kind: "plan", solution: "one-to-four" }, "08:00");
    expect(runAt(typedOn(file, ["09:10 d 1000"]), "10:00").course.balances.arrestCrystalloid.value).toBe(800);
  });

  test("of each dose is that of its own solution", () => {
    const file = given(
      typed(["09:10 d 1000"]),
      { kind: "dose", state: "whole", ml: 500, solution: "one-to-four" },
      "09:30",
    );
    expect(runAt(file, "10:00").course.balances.arrestCrystalloid.value).toBe(200 + 400);
  });

  test("follows a solution that is named at the end of the dose", () => {
    const file = given(
      typed(["09:10 d"]),
      { kind: "dose", state: "end", ml: 500, solution: "one-to-four" },
      "09:14",
    );
    expect(runAt(file, "10:00").course.balances.arrestCrystalloid.value).toBe(400);
  });
});

test("a dose put right from 300 to 350 mL moves the total and leaves the due time", () => {
  const before = typed(["09:00 x", "09:10 d 900", "09:30 d 300"]);
  const after = typedOn(before, ["09:40 z 350"]);
  const read = (file: typeof before) => {
    const { course, nextDose } = runAt(file, "09:45");
    return [
      course.balances.arrestGiven.value,
      course.balances.arrestCrystalloid.value,
      nextDose.due,
      nextDose.since,
    ];
  };
  const due = runAt(before, "09:50").now;
  expect(read(before)).toEqual([1200, 240, due, minutes(15)]);
  expect(read(after)).toEqual([1250, 250, due, minutes(15)]);
});

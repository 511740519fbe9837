/** The phase of the run. */
import { describe, expect, test } from "vitest";
import { given, openedCase, runAt, typed, typedOn } from "../helpers/typed-case.ts";

const phase = (lines: readonly string[]) => runAt(typed(lines), "23:00").course.phase;

test("a whole run goes through its phases", () => {
  const steps: [line: string, phase: string][] = [
    ["08:40 h 28000", "before"],
    ["09:00 b", "on bypass"],
    ["09:02 f full", "on bypass"],
    ["09:10 x", "arrested"],
    ["09:20 f 3/4", "arrested"],
    ["10:00 x", "reperfusing"],
    ["10:10 f 3/4", "weaning"],
    ["10:11 f full", "reperfusing"],
    ["10:12 f 1/2", "weaning"],
    ["10:15 b", "after"],
    ["10:20 b", "on bypass"],
    ["10:25 f 1/4", "weaning"],
    ["10:30 x", "arrested"],
    ["10:40 x", "reperfusing"],
    ["10:50 b", "after"],
  ];
  const lines = steps.map(([line]) => line);
  expect(steps.map((_, i) => phase(lines.slice(0, i + 1)))).toEqual(steps.map(([, name]) => name));
});

describe("a run", () => {
  test.each<[string, string[], string]>([
    ["without a clamp weans when flow falls", ["09:00 b", "09:30 f 1/2"], "weaning"],
    ["in circulatory arrest is arrested", ["09:00 b", "09:30 m a"], "arrested"],
    [
      "out of circulatory arrest and never clamped is on bypass",
      ["09:00 b", "09:30 m a", "09:50 m a"],
      "on bypass",
    ],
    ["with its end struck out goes on", ["09:00 b", "10:00 b", "10:01 z ! not yet"], "on bypass"],
    ["off by an entry told late is after", ["09:00 b", "10:30 b @10:00"], "after"],
  ])("%s", (_, lines, expected) => {
    expect(phase(lines)).toBe(expected);
  });
});

describe("litres a minute", () => {
  const sized = given(openedCase(), { kind: "plan", fullFlow: 5 }, "08:00");
  const ordered = (file: typeof sized, litres: string) =>
    runAt(typedOn(file, ["09:00 b", `09:30 f ${litres}`]), "09:40").course.phase;

  test("wean when they are clearly below a full flow that is known", () => {
    expect(["5", "4.6", "4.5", "4.4", "0"].map((litres) => ordered(sized, litres))).toEqual([
      "on bypass",
      "on bypass",
      "on bypass",
      "weaning",
      "weaning",
    ]);
  });

  test("say nothing of weaning while full flow is not known", () => {
    expect(ordered(openedCase(), "1")).toBe("on bypass");
  });
});

/** A form half filled waits for the person, whatever comes between. */
import { describe, expect, test } from "vitest";
import { type FormMode, type Model, openModel } from "../../src/console/model.ts";
import { update } from "../../src/console/update.ts";
import { ESCAPE, entriesOf, press } from "../helpers/console-keys.ts";
import { at, typed } from "../helpers/typed-case.ts";

const TAB = { name: "tab" } as const;
const file = typed(["08:40 h 28000", "09:00 b", "09:05 s flow=4.7 MAP=60"]);
const half = press(openModel(file), "s4.5\n62\n", at("10:00"));

const form = ({ mode }: Model): FormMode => {
  if (mode.name !== "form") throw new Error(`no form is open: the console is in ${mode.name}`);
  return mode;
};

describe("a form half filled", () => {
  test("is as it was after a look at every other panel", () => {
    let model = press(half, [ESCAPE], at("10:01"));
    const seen = new Set<string>();
    for (; !seen.has(model.panel); model = press(model, [TAB], at("10:01"))) seen.add(model.panel);
    expect(seen.size).toBeGreaterThan(4);
    expect(form(press(model, [ESCAPE], at("10:02")))).toEqual(form(half));
  });

  test("is as it was after help, a search and a checklist were opened", () => {
    const looked = press(press(half, [ESCAPE], at("10:01")), "?q/flow\b\b\b\b\bcb", at("10:01"));
    const back = press(looked, [ESCAPE, ESCAPE, ESCAPE], at("10:02"));
    expect(form(back)).toEqual(form(half));
  });

  test("is as it was hours later, and its entry has the time of its first key", () => {
    const written = press(half, "5;\n", at("13:30"));
    expect(entriesOf(written).at(-1)).toMatchObject({
      values: { flow: 4.5, meanPressure: 62, centralVenousPressure: 5 },
      at: "2026-03-04T10:00:00.000+01:00",
      loggedAt: "2026-03-04T13:30:00.000+01:00",
    });
  });

  test("lets what is more urgent be written in between, by strokes and by another form", () => {
    const urgent = press(press(half, [ESCAPE], at("10:01")), "x\ng\n7.4;\nd800a\n", at("10:01"));
    expect(
      entriesOf(urgent)
        .slice(file.entries.length)
        .map(({ kind }) => kind),
    ).toEqual(["span", "gas", "dose"]);
    const back = press(urgent, [ESCAPE], at("10:02"));
    expect(form(back)).toEqual(form(half));
    expect(entriesOf(press(back, ";\n", at("10:03"))).at(-1)).toMatchObject({ kind: "readings" });
  });

  test("waits with others, and the last set aside comes back first", () => {
    const two = press(press(half, [ESCAPE], at("10:01")), "g\n7.4", at("10:01"));
    const back = press(two, [ESCAPE, ESCAPE], at("10:02"));
    expect(form(back)).toEqual(form(two));
    const first = press(press(back, ";\n", at("10:03")), [ESCAPE], at("10:03"));
    expect(form(first)).toEqual(form(half));
  });

  test("is not touched by news of saves, of a failing disk or of the clock", () => {
    const news = [
      { name: "saved", seq: 4 },
      { name: "not-saved", why: "the disk is full" },
      { name: "clock-stepped", stepMs: 3_600_000 },
      { name: "told", words: "a sentence" },
    ] as const;
    const after = news.reduce<Model>((before, message) => update(before, message, at("10:04")).model, half);
    expect(form(after)).toEqual(form(half));
  });
});

/** Finding a stroke, help, panels, the log's end, and leaving. */
import { describe, expect, test } from "vitest";
import { type Key, keysOf } from "../../src/console/key.ts";
import { isUnsaved, type Model, openModel, PANELS } from "../../src/console/model.ts";
import { update } from "../../src/console/update.ts";
import { DOWN, ESCAPE, entriesOf, openLine, paste, press, UP } from "../helpers/console-keys.ts";
import { at, openedCase, typed } from "../helpers/typed-case.ts";

const model = openModel(openedCase());
const later = at("10:05");

describe("a stroke found by name", () => {
  test("opens with the time of the first key", () => {
    const written = press(press(press(model, "/", at("10:00")), "prota\n", later), "280\n", later);
    expect(entriesOf(written).at(-1)).toMatchObject({
      name: "protamine",
      at: "2026-03-04T10:00:00.000+01:00",
    });
  });

  test("is chosen by arrow among those that fit", () => {
    const found = press(model, "/on\n", later);
    const next = press(press(press(model, "/on", later), [DOWN], later), "\n", later);
    const back = press(press(press(model, "/on", later), [DOWN, UP, UP], later), "\n", later);
    expect(openLine(next).stroke).not.toBe(openLine(found).stroke);
    expect(openLine(back).stroke).toBe(openLine(found).stroke);
  });

  test("by a name that no stroke has stays open", () => {
    expect(press(model, "/xylophone\n", later).mode).toMatchObject({ name: "find", text: "xylophone" });
  });

  test("takes a pasted name, and closes by Esc or by Backspace on nothing", () => {
    const pasted = press(press(model, "/", later), [paste("clamp\n")], later);
    expect(openLine(press(pasted, "\n", later)).stroke).toBe("x");
    expect(press(pasted, [ESCAPE], later).mode).toEqual({ name: "plain" });
    expect(press(press(model, "/", later), [{ name: "backspace" }], later).mode).toEqual({ name: "plain" });
  });
});

describe("help", () => {
  const help = press(model, "?", later);

  test("scrolls and never beyond its top", () => {
    const scrolled = press(help, [DOWN, DOWN, { name: "pagedown" }, UP], later);
    expect(scrolled.mode).toEqual({ name: "help", scroll: 11 });
    expect(press(help, [UP], later).mode).toEqual({ name: "help", scroll: 0 });
  });

  test("closes by Esc, Enter, ? or q, and by nothing else", () => {
    const closing: Key[] = [
      ESCAPE,
      { name: "enter" },
      { name: "char", char: "?" },
      { name: "char", char: "q" },
    ];
    for (const key of closing) expect(press(help, [key], later).mode).toEqual({ name: "plain" });
    expect(press(help, "d", later).mode.name).toBe("help");
  });
});

test("Tab goes round the panels, and back again", () => {
  const after = (name: "tab" | "backtab", times: number) =>
    press(model, Array(times).fill({ name }), later).panel;
  expect(PANELS.map((_, times) => after("tab", times))).toEqual(PANELS);
  expect([after("tab", PANELS.length), after("backtab", 1)]).toEqual([PANELS[0], PANELS.at(-1)]);
});

test("the log scrolls between its first and its last entry, and an entry brings its end back", () => {
  const long = openModel(typed(Array.from({ length: 30 }, (_, i) => `08:${String(i + 10)} n ${i}`)));
  const scroll = (...names: readonly ("up" | "down" | "pageup" | "pagedown" | "home" | "end")[]) =>
    press(
      long,
      names.map((name) => ({ name })),
      later,
    ).scroll;
  expect([
    scroll("up"),
    scroll("pageup", "down"),
    scroll("down"),
    scroll("home"),
    scroll("home", "end"),
  ]).toEqual([1, 9, 0, 30, 0]);
  expect(press(press(long, [{ name: "home" }], later), "nnew\n", later).scroll).toBe(0);
});

test("a key that is no stroke says so, and white space says nothing", () => {
  expect(press(model, "D", later).notice).toBe('"D" is no stroke: ? shows them all.');
  expect(press(model, " ", later).notice).toBeNull();
  expect(press(press(model, "D", later), "d", later).notice).toBeNull();
});

describe("leaving", () => {
  const saved: Model = press(model, "q", later);
  const unsaved: Model = press(press(model, "a512\n", later), "q", later);
  const leaves = (from: Model, key: Key) =>
    update(from, key, later).effects.some((effect) => effect.do === "leave");

  test("takes Enter once everything is on the disk", () => {
    expect(leaves(saved, { name: "enter" })).toBe(true);
    expect(leaves(saved, { name: "char", char: "!" })).toBe(false);
  });

  test("takes a deliberate ! while something is not", () => {
    expect(isUnsaved(unsaved)).toBe(true);
    expect(leaves(unsaved, { name: "enter" })).toBe(false);
    expect(press(unsaved, "\n", later).mode).toEqual({ name: "leave" });
    expect(leaves(unsaved, { name: "char", char: "!" })).toBe(true);
    const since = update(unsaved, { name: "saved", seq: 2 }, later).model;
    expect(leaves(since, { name: "enter" })).toBe(true);
  });

  test("is called off by Esc or any other character", () => {
    for (const key of [ESCAPE, { name: "char", char: "x" } as const])
      expect(press(saved, [key], later).mode).toEqual({ name: "plain" });
  });

  test("by Ctrl-C sets what is half typed aside", () => {
    const asked = press(press(model, "d300", at("10:00")), [{ name: "interrupt" }], later);
    expect(asked.mode).toEqual({ name: "leave" });
    expect(openLine(press(asked, [ESCAPE, ESCAPE], later))).toMatchObject({ stroke: "d", text: "300" });
  });
});

describe("news from the disk", () => {
  test("counts what is saved and never counts back", () => {
    const told = [3, 2].reduce((before, seq) => update(before, { name: "saved", seq }, later).model, model);
    expect(told.saved).toBe(3);
  });

  test("of trouble stays until a save works", () => {
    const trouble = update(model, { name: "not-saved", why: "the disk is full" }, later).model;
    expect(press(trouble, "d", later).trouble).toBe("the disk is full");
    expect(update(trouble, { name: "saved", seq: 1 }, later).model.trouble).toBeNull();
  });
});

describe("a clock that reads earlier than the last entry", () => {
  const asking: Model = { ...model, mode: { name: "clock-early", byMs: 60_000 } };

  test("is asked about before anything is written, whatever is pressed", () => {
    const pressed = press(
      asking,
      [...keysOf("d300q?!"), paste("x"), { name: "interrupt" }, { name: "tab" }],
      later,
    );
    expect(pressed.mode).toEqual(asking.mode);
    expect(entriesOf(pressed)).toEqual(entriesOf(model));
  });

  test("is gone on from by Enter, and the record says so", () => {
    const on = press(asking, "\n", later);
    expect(on.mode).toEqual({ name: "plain" });
    expect(entriesOf(on).at(-1)).toMatchObject({ kind: "clock", stepMs: -60_000 });
  });

  test("is left by Esc without an entry", () => {
    const step = update(asking, ESCAPE, later);
    expect(step.effects).toEqual([{ do: "leave" }]);
    expect(step.model.file).toBe(model.file);
  });
});

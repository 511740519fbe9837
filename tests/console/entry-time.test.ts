/** The time of an entry is the time of the first key, and nothing typed is lost on the way to Enter. */
import { describe, expect, test } from "vitest";
import type { Key } from "../../src/console/key.ts";
import { openModel } from "../../src/console/model.ts";
import { update } from "../../src/console/update.ts";
import { ESCAPE, entriesOf, openLine, paste, press } from "../helpers/console-keys.ts";
import { at, openedCase, typed } from "../helpers/typed-case.ts";

const model = openModel(openedCase());

const last = (from: typeof model) => entriesOf(from).at(-1);

describe("an entry", () => {
  test("carries the time of its first key, and of Enter as the time it was written", () => {
    const opened = press(model, "d", at("10:00"));
    const written = press(press(opened, "300 r", at("10:01")), "\n", at("10:02"));
    expect(last(written)).toMatchObject({
      kind: "dose",
      at: "2026-03-04T10:00:00.000+01:00",
      loggedAt: "2026-03-04T10:02:00.000+01:00",
      typed: "d300 r",
    });
  });

  test("is saved by the step that writes it, and by no other", () => {
    const effects = [..."a512\n"].map((char) => (char === "\n" ? "enter" : char));
    let before = model;
    const saves: number[] = [];
    for (const name of effects) {
      const key: Key = name === "enter" ? { name } : { name: "char", char: name };
      const step = update(before, key, at("10:00"));
      before = step.model;
      saves.push(step.effects.filter((effect) => effect.do === "save").length);
    }
    expect(saves).toEqual([0, 0, 0, 0, 1]);
  });

  test("that is wrong keeps the line open and says why, until the next key", () => {
    const refused = press(model, "a5x2\n", at("10:00"));
    expect(openLine(refused)).toMatchObject({
      text: "5x2",
      fault: '"5x2" is not an ACT: type seconds such as 480.',
    });
    const mended = press(refused, [{ name: "left" }, { name: "backspace" }], at("10:01"));
    expect(openLine(mended)).toMatchObject({ text: "52", fault: null });
    expect(last(press(mended, "\n", at("10:02")))).toMatchObject({ seconds: 52 });
  });

  test("is read against the record as it is at Enter", () => {
    const aside = press(press(model, "d", at("10:00")), [ESCAPE], at("10:00"));
    const started = press(aside, "d\n", at("10:01"));
    const ended = press(press(started, [ESCAPE], at("10:02")), "300\n", at("10:03"));
    expect(last(ended)).toMatchObject({ state: "end", ml: 300, at: "2026-03-04T10:00:00.000+01:00" });
  });
});

describe("Esc", () => {
  test("sets a line aside and brings it back with its first time", () => {
    const aside = press(press(model, "d300", at("10:00")), [ESCAPE], at("10:01"));
    expect(aside).toMatchObject({ mode: { name: "plain" }, notice: "Set aside: Esc brings it back." });
    const other = press(aside, "a512\n", at("10:05"));
    const back = press(other, [ESCAPE], at("10:10"));
    expect(openLine(back)).toMatchObject({ stroke: "d", text: "300", cursor: 3 });
    expect(last(press(back, "\n", at("10:11")))).toMatchObject({
      at: "2026-03-04T10:00:00.000+01:00",
      ml: 300,
    });
  });

  test("brings back lines set aside, the last first", () => {
    const two = press(
      press(press(press(model, "d1", at("10:00")), [ESCAPE], at("10:00")), "a2", at("10:01")),
      [ESCAPE],
      at("10:01"),
    );
    const first = press(two, [ESCAPE], at("10:02"));
    expect(openLine(first)).toMatchObject({ stroke: "a", text: "2" });
    expect(openLine(press(press(first, "00\n", at("10:02")), [ESCAPE], at("10:03")))).toMatchObject({
      stroke: "d",
      text: "1",
    });
  });

  test("that was no Esc leaves everything as it was", () => {
    const open = press(model, "d30", at("10:00"));
    const taken = press(open, [ESCAPE, { name: "unescape" }, { name: "left" }], at("10:01"));
    expect(taken.aside).toEqual([]);
    expect(openLine(taken)).toMatchObject({ text: "30", cursor: 1 });
  });

  test("that was no Esc is taken back after news from the disk too", () => {
    const escaped = press(press(model, "d30", at("10:00")), [ESCAPE], at("10:01"));
    const told = update(escaped, { name: "saved", seq: 1 }, at("10:01")).model;
    expect(openLine(press(told, [{ name: "unescape" }], at("10:01"))).text).toBe("30");
  });
});

describe("Backspace", () => {
  test("takes back a character, and on an empty line closes it", () => {
    const open = press(model, "d3", at("10:00"));
    const emptied = press(open, [{ name: "backspace" }], at("10:00"));
    expect(openLine(emptied).text).toBe("");
    expect(press(emptied, [{ name: "backspace" }], at("10:00"))).toMatchObject({
      mode: { name: "plain" },
      aside: [],
    });
  });

  test("before the first character of a line with text does nothing", () => {
    const open = press(
      press(model, "d3", at("10:00")),
      [{ name: "home" }, { name: "backspace" }],
      at("10:00"),
    );
    expect(openLine(open)).toMatchObject({ text: "3", cursor: 0 });
  });
});

describe("editing", () => {
  test("moves by whole characters of any script", () => {
    const keys: Key[] = [
      { name: "left" },
      { name: "backspace" },
      { name: "home" },
      { name: "delete" },
      { name: "end" },
    ];
    expect(openLine(press(press(model, "n冷🫀却!", at("10:00")), keys, at("10:00")))).toMatchObject({
      text: "🫀!",
      cursor: 2,
    });
  });

  test("holds so much and no more", () => {
    const full = press(model, `n${"a".repeat(600)}`, at("10:00"));
    expect(openLine(full).text.length).toBe(500);
    expect(openLine(press(full, [paste("more")], at("10:00"))).text.length).toBe(500);
  });
});

describe("a paste", () => {
  test("with line breaks joins the line as one piece and writes nothing", () => {
    const pasted = press(press(model, "n", at("10:00")), [paste("one\r\ntwo\n\nthree\n")], at("10:00"));
    expect(openLine(pasted).text).toBe("one two three");
    expect(entriesOf(pasted)).toEqual(entriesOf(model));
  });

  test("goes in at the cursor and clears what was wrong", () => {
    const refused = press(model, "a512x\n", at("10:00"));
    const pasted = press(refused, [{ name: "home" }, paste("1")], at("10:00"));
    expect(openLine(pasted)).toMatchObject({ text: "1512x", cursor: 1, fault: null });
  });

  test("where no line is open is not taken, and says so", () => {
    expect(press(model, [paste("d300\n")], at("10:00"))).toMatchObject({
      mode: { name: "plain" },
      notice: "Pasted text is only taken on an open line: press a stroke first.",
    });
  });

  test("of nothing that shows changes nothing", () => {
    const open = press(model, "n", at("10:00"));
    expect(press(open, [paste("\x1b\u202e\n")], at("10:00")).mode).toEqual(open.mode);
  });
});

test("a step of the system clock is an entry, and leaves the open line as it is", () => {
  const open = press(openModel(typed(["09:00 b"])), "d3", at("10:00"));
  const step = update(open, { name: "clock-stepped", stepMs: -3_600_000 }, at("10:00"));
  expect(last(step.model)).toMatchObject({ kind: "clock", stepMs: -3_600_000, typed: "" });
  expect(step.effects).toEqual([{ do: "save", file: step.model.file }]);
  expect(openLine(step.model).text).toBe("3");
  expect(step.model.notice).toBe(
    "The system clock stepped by -3600 s; the record keeps its own time (now 10:00:00).",
  );
});

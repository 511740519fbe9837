/** Keys in a form: several values typed in one go. */
import { describe, expect, test } from "vitest";
import type { Key } from "../../src/console/key.ts";
import { type FormMode, type Model, openModel } from "../../src/console/model.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { ESCAPE, entriesOf, paste, press, UP } from "../helpers/console-keys.ts";
import { at, lastDraft, openedCase, refusal, typed } from "../helpers/typed-case.ts";

const model = openModel(openedCase({ ...adultProtocol, readingFields: ["flow", "meanPressure", "sweep"] }));
const TAB: Key = { name: "tab" };

const form = ({ mode }: Model): FormMode => {
  if (mode.name !== "form") throw new Error(`no form is open: the console is in ${mode.name}`);
  return mode;
};

const opened = press(model, "s", at("10:00"));

describe("readings", () => {
  test("are typed field by field, and carry the time of the first key", () => {
    const written = press(press(opened, "4,5\t62\n", at("10:01")), "\n\n", at("10:02"));
    expect(entriesOf(written).at(-1)).toMatchObject({
      kind: "readings",
      values: { flow: 4.5, meanPressure: 62 },
      at: "2026-03-04T10:00:00.000+01:00",
      loggedAt: "2026-03-04T10:02:00.000+01:00",
    });
  });

  test("reach their end by ; and take a time and a note there", () => {
    const written = press(opened, "4.5;@9:50 ; after volume\n", at("10:01"));
    expect(entriesOf(written).at(-1)).toMatchObject({
      values: { flow: 4.5 },
      at: "2026-03-04T09:50:00.000+01:00",
      note: "after volume",
    });
  });

  test("are read back as one line from what is kept as typed", () => {
    const written = press(opened, "4.5\t62;@9:50 ; after volume\n", at("10:01"));
    const entry = entriesOf(written).at(-1);
    const again = typed([`10:00 ${entry?.typed}`], model.file.protocol);
    expect(lastDraft(again)).toEqual(lastDraft(written.file));
    expect(again.entries.at(-1)?.at).toBe(entry?.at);
  });

  test("that are no number keep their field, and say why", () => {
    const wrong = press(opened, "fast\t", at("10:00"));
    expect(form(wrong)).toMatchObject({ field: form(opened).field });
    expect(form(wrong).fault).toMatch(/^"fast" is not a number: type such as .+\.$/);
    expect(entriesOf(press(wrong, "\n\n\n\n", at("10:00")))).toEqual(entriesOf(model));
  });

  test("left empty write nothing, and say so", () => {
    const nothing = press(opened, ";\n", at("10:00"));
    expect(form(nothing).fault).toBe("Nothing typed: type at least one value; Esc sets the form aside.");
  });

  test("beyond anything that can be kept are refused", () => {
    expect(refusal(model.file, "s flow=200000")).toMatch(
      /^This cannot be kept \(.+\): type it as it can be meant\.$/,
    );
  });
});

describe("a form with nothing typed", () => {
  test("is closed by Esc, and what was set aside before it comes back first", () => {
    const aside = press(press(opened, "4.5", at("10:00")), [ESCAPE], at("10:00"));
    const again = press(press(aside, "g", at("10:01")), [ESCAPE], at("10:01"));
    expect(again.mode.name).toBe("plain");
    expect(form(press(again, [ESCAPE], at("10:02")))).toMatchObject({ stroke: "s", texts: { flow: "4.5" } });
  });
});

describe("moving in a form", () => {
  const fieldAfter = (...keys: readonly Key[]) => form(press(opened, keys, at("10:00"))).field;

  test("goes round by Tab and by the arrows", () => {
    const [first, second] = [fieldAfter(), fieldAfter(TAB)];
    expect(second).not.toBe(first);
    expect(fieldAfter(TAB, UP)).toBe(first);
    expect(fieldAfter(TAB, { name: "backtab" })).toBe(first);
    expect(fieldAfter(UP, TAB)).toBe(first);
    expect(fieldAfter(TAB, TAB, TAB, TAB)).toBe(first);
  });

  test("keeps what was typed, and a paste goes into the field", () => {
    const back = press(press(opened, "4.5\t", at("10:00")), [UP, paste("6\n")], at("10:00"));
    expect(Object.values(form(back).texts)).toEqual(["4.56"]);
  });

  test("ends by Esc, which brings all of it back", () => {
    const aside = press(press(opened, "4.5\t6", at("10:00")), [ESCAPE], at("10:00"));
    expect(aside.mode.name).toBe("plain");
    const back = press(aside, [ESCAPE], at("10:05"));
    expect(form(back)).toMatchObject({ ...form(press(opened, "4.5\t6", at("10:00"))) });
  });
});

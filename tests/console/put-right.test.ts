/** z: putting entries right, by a line and by keys. */
import { describe, expect, test } from "vitest";
import { openModel } from "../../src/console/model.ts";
import { entryWords } from "../../src/figures/entry-words.ts";
import { readCase } from "../../src/record/reading-a-file.ts";
import { standing } from "../../src/record/standing.ts";
import { DOWN, entriesOf, press, UP } from "../helpers/console-keys.ts";
import { at, given, lastDraft, minutes, refusal, runAt, typed, typedOn } from "../helpers/typed-case.ts";

const run = typed([
  ...["08:00 h 28000", "08:10 p 20", "08:20 a 500", "08:30 f 3/4", "08:31 t 32", "09:00 b", "09:01 x"],
  ...["09:02 d 300 a", "09:03 v 500 c", "09:04 u 100", "09:05 r 50", "09:06 l 800", "09:07 m s", "09:08 m d"],
  ...["09:09 m ca", "09:10 w 20 gas", "09:11 n hello", "09:12 e air", "09:13 i norad 10"],
]);

/** What a correction of this run changes. */
const changesOf = (line: string) => lastDraft(typedOn(run, [`10:00 ${line}`]));
const amended = (target: string, changes: object) => ({ kind: "amend", target, changes });

describe("an amount put right", () => {
  test.each<[string, string, object]>([
    ["z #2 30k", "e2", { amount: 30_000 }],
    ["z #3 30mg", "e3", { amount: 30 }],
    ["z #4 490", "e4", { seconds: 490 }],
    ["z #5 full", "e5", { fraction: 1, litresPerMinute: null }],
    ["z #5 4,2", "e5", { fraction: null, litresPerMinute: 4.2 }],
    ["z #6 33", "e6", { celsius: 33 }],
    ["z #7 off", "e7", { state: "off" }],
    ["z #9 350", "e9", { ml: 350 }],
    ["z #9 0.35L s", "e9", { ml: 350, route: "coronary-sinus" }],
    ["z #9 r", "e9", { route: "right-ostium" }],
    ["z #10 400", "e10", { ml: 400 }],
    ["z #10 400 r", "e10", { ml: 400, fluid: "red-cells" }],
    ["z #11 =250", "e11", { bagTotal: 250, ml: null }],
    ["z #11 120", "e11", { ml: 120, bagTotal: null }],
    ["z #12 80", "e12", { ml: 80 }],
    ["z #13 0.7L", "e13", { ml: 700 }],
    ["z #14 v", "e14", { what: "vent", way: null }],
    ["z #14 off", "e14", { state: "off" }],
    ["z #15 f", "e15", { what: "heart-filled" }],
    ["z #16 cr", "e16", { what: "cerebral-perfusion", way: "retrograde" }],
    ["z #17 30", "e17", { dueAt: "2026-03-04T09:40:00.000+01:00" }],
    ["z #18 new words", "e18", { text: "new words" }],
    ["z #19 less air", "e19", { text: "less air" }],
    ["z #20 12", "e20", { amount: 12 }],
    ["z 12", "e20", { amount: 12 }],
    ["z #e20 12", "e20", { amount: 12 }],
  ])("%s", (line, target, changes) => {
    expect(changesOf(line)).toEqual(amended(target, changes));
  });

  test("keeps its time, and a correction has a time of its own", () => {
    const after = typedOn(run, ["10:00 z #9 350"]);
    expect(after.entries.at(-1)?.at).toBe("2026-03-04T10:00:00.000+01:00");
    expect(standing(after.entries).written[8]?.at).toBe(at("09:02").ms);
  });
});

describe("a time put right", () => {
  test("moves the entry and nothing else", () => {
    expect(changesOf("z #8 @8:58")).toEqual(amended("e8", { at: "2026-03-04T08:58:00.000+01:00" }));
    expect(runAt(typedOn(run, ["10:00 z #8 @8:58"]), "10:00").timers.arrest.total).toBe(minutes(62));
  });

  test("together with an amount, and with a note on the correction", () => {
    expect(changesOf("z #9 350 @9:00 ; misread")).toEqual({
      ...amended("e9", { ml: 350, at: "2026-03-04T09:00:00.000+01:00" }),
      note: "misread",
    });
  });
});

describe("an entry struck out", () => {
  test("with its reason, and taken back by back", () => {
    const struck = typedOn(run, ["10:00 z #9 ! wrong patient"]);
    expect(lastDraft(struck)).toEqual({ kind: "void", target: "e9", reason: "wrong patient" });
    const back = typedOn(struck, ["10:01 z #9 back"]);
    expect(lastDraft(back)).toEqual({ kind: "void", target: "e21", reason: "e9 taken back" });
    const given = [run, struck, back].map((file) => runAt(file, "10:05").course.balances.arrestGiven.value);
    expect(given).toEqual([300, null, 300]);
  });

  test("is no longer picked first", () => {
    const struck = typedOn(run, ["10:00 z ! slip", "10:01 z new"]);
    expect(lastDraft(struck)).toEqual(amended("e19", { text: "new" }));
  });

  test("is put right only after it was taken back", () => {
    const struck = typedOn(run, ["10:00 z #9 ! slip"]);
    expect(refusal(struck, "z #9 350")).toBe("e9 is struck out: type back to take the strike back.");
    expect(refusal(struck, "z #9 ! again")).toBe(
      "e9 is struck out already: type back to take the strike back.",
    );
  });
});

describe("refused", () => {
  test.each([
    ["z", "Nothing typed: type a new amount, a time such as @10:42, or ! and a reason to strike it out."],
    ["z #9", "Nothing typed: type a new amount, a time such as @10:42, or ! and a reason to strike it out."],
    ["z #99 5", "There is no such entry: pick one with the arrows, or by its number such as #12."],
    ["z #1 5", "e1 cannot be put right by hand: pick another entry with the arrows."],
    ["z #9 !", "No reason given: type ! and why it is struck out."],
    ["z #9 350+", "A dose is put right by its millilitres: type them without +."],
    ["z #9 much", '"much" is neither millilitres nor a route letter: type such as 300, 300+ or 300 r.'],
    [
      "z #7 s",
      "bypass can be put right so: type on or off, a time such as @10:42, or ! and a reason to strike it out.",
    ],
    ["z #14 d", '"d" is not on the list: type one of its letters.'],
    ["z #14 v on", "It can be put right to another of the list: type its letter alone."],
    ["z #17 99999", '"99999" is not a number of minutes up to 1440: type such as 20, or 15 blood gas.'],
    ["z #20 1000001", "That would not be a valid entry: type the amount as you would for a new one."],
  ])("%s", (line, fault) => {
    expect(refusal(run, line, at("10:00"))).toBe(fault);
  });

  test("anything but the time of a form's entry", () => {
    const file = given(run, { kind: "patient", weight: 70 }, "09:30");
    expect(refusal(file, "z 75", at("10:00"))).toBe(
      "Only the time of this entry can be changed: type @10:42, or ! and a reason to strike it out.",
    );
    expect(lastDraft(typedOn(file, ["10:00 z @9:20"]))).toMatchObject({ kind: "amend", target: "e21" });
  });

  test("when there is nothing to put right", () => {
    expect(press(openModel(typed([])), "z", at("10:00"))).toMatchObject({
      mode: { name: "plain" },
      notice: "There is no entry to put right yet.",
    });
  });
});

describe("a bag reading put right", () => {
  const read = typed(["09:00 u 100", "09:30 u =450", "10:00 u 50"]);

  test("is held against the urine before it, not after", () => {
    expect(lastDraft(typedOn(read, ["10:10 z #3 =120"]))).toEqual(amended("e3", { bagTotal: 120, ml: null }));
    expect(refusal(read, "z #3 =90")).toMatch(/^The bag cannot read 90 mL when 100 mL are recorded already/);
  });

  test("is held against what was written before it in the same moment", () => {
    const together = typed(["09:00 u 100", "09:00 u =450", "09:00 u 50"]);
    expect(lastDraft(typedOn(together, ["10:10 z #3 =120"]))).toEqual(
      amended("e3", { bagTotal: 120, ml: null }),
    );
  });
});

describe("by keys", () => {
  const model = openModel(run);
  const target = (keys: Parameters<typeof press>[1]) => {
    const { mode } = press(press(model, "z", at("10:00")), keys, at("10:00"));
    return mode.name === "put-right" ? mode.target : mode.name;
  };

  test("arrows pick another entry, from the first that can be put right to the last", () => {
    expect([target([]), target([UP]), target([UP, UP, DOWN]), target([DOWN])]).toEqual([
      "e20",
      "e19",
      "e19",
      "e20",
    ]);
    expect(target(Array(50).fill(UP))).toBe("e2");
  });

  test("the entry picked by arrow is named in what is kept as typed, and reads back the same", () => {
    const pressed = press(press(press(model, "z", at("10:00")), [UP, UP], at("10:00")), "new\n", at("10:01"));
    const entry = entriesOf(pressed).at(-1);
    expect(entry).toMatchObject({ kind: "amend", target: "e18", typed: "z#18 new" });
    expect(lastDraft(typedOn(run, [`10:00 ${entry?.typed}`]))).toEqual(lastDraft(pressed.file));
  });

  test("a correction in the log says what it did", () => {
    const said = ["z #11 =250", "z #5 full", "z #8 @8:58", "z #9 ! slip"].map(
      (line) => entryWords(changesOf(line) as never, run.protocol).says,
    );
    expect(said).toEqual(["#11: bag reads 250 mL", "#5: full", "#8: time 08:58:00", "#9 · slip"]);
  });
});

test("a case full of corrections reads back", () => {
  const file = typedOn(run, [
    ...["10:00 z #11 =250", "10:01 z #11 =260", "10:02 z #11 130", "10:03 z #5 full", "10:04 z #5 4"],
    ...["10:05 z #9 ! slip", "10:06 z #9 back", "10:07 z #9 350 r @9:03", "10:08 z #14 v", "10:09 z #16 cr"],
  ]);
  const read = readCase(JSON.stringify(file));
  expect(read).toEqual({ ok: true, value: file });
});

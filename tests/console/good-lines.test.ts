/** The grammar of the entry line: what is typed, and the entry it makes. */
import { describe, expect, test } from "vitest";
import { logged } from "../../src/console/read-stroke.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { at, lastDraft, openedCase, typed } from "../helpers/typed-case.ts";

/** The entry a line makes at noon, without what every entry carries. */
function draftOf(file: CaseFile, line: string): object {
  const outcome = logged(file, line, at("12:00"));
  if (!outcome.ok) throw new Error(outcome.fault);
  return lastDraft(outcome.value);
}

/** Each row: the lines that mean the same, and what of the entry matters. */
type Rows = readonly (readonly [lines: readonly string[], draft: object])[];

const each = (file: CaseFile, rows: Rows) =>
  test.each(rows.flatMap(([lines, draft]) => lines.map((line) => [line, draft] as const)))(
    "%s",
    (line, draft) => {
      expect(draftOf(file, line)).toEqual(draft);
    },
  );

const idle = openedCase();

describe("b and x: bypass and the clamp", () => {
  const span = (what: string, state: string) => ({ kind: "span", what, state });
  each(idle, [
    [["b", "b on", "b ON", "b  on "], span("bypass", "on")],
    [["b off"], span("bypass", "off")],
    [["x"], span("clamp", "on")],
  ]);
  each(typed(["09:00 b", "09:10 x"]), [
    [["b", "b off"], span("bypass", "off")],
    [["b on"], span("bypass", "on")],
    [["x", "x off"], span("clamp", "off")],
    // The other state than the one that held at the time typed.
    [["b @08:50", "b on @08:50"], span("bypass", "on")],
    [["b @09:00", "b @09:05"], span("bypass", "off")],
    [["x @09:05"], span("clamp", "on")],
  ]);
  each(typed(["09:00 b", "09:10 x", "09:40 x"]), [
    [["x @09:20"], span("clamp", "off")],
    [["x @09:40", "x @09:05"], span("clamp", "on")],
  ]);
});

describe("d: a dose", () => {
  const dose = (state: string, rest: object = {}) => ({ kind: "dose", state, ...rest });
  describe("with none running", () => {
    each(idle, [
      [["d"], dose("start")],
      [["d r", "dr", "d R"], dose("start", { route: "right-ostium" })],
      [["d 300", "d300", "d 300ml", "d 0.3L", "d 0,3L"], dose("whole", { ml: 300 })],
      [["d 1.2L", "d 1,2L", "d 1200"], dose("whole", { ml: 1200 })],
      [["d 300 a", "d a 300", "d300a"], dose("whole", { ml: 300, route: "root" })],
      [["d 300 l"], dose("whole", { ml: 300, route: "left-ostium" })],
      [["d 300 s"], dose("whole", { ml: 300, route: "coronary-sinus" })],
      [["d 300 g"], dose("whole", { ml: 300, route: "graft" })],
      [["d 300 a p80 t8"], dose("whole", { ml: 300, route: "root", pressure: 80, temperature: 8 })],
    ]);
  });
  describe("with one running", () => {
    each(typed(["09:00 x", "09:10 d"]), [
      [["d 900"], dose("end", { ml: 900 })],
      [["d 900 s", "d s 900"], dose("end", { ml: 900, route: "coronary-sinus" })],
      [["d 300+", "d300+", "d 0.3L+"], dose("so-far", { ml: 300 })],
      [["d 300+ a", "d a 300+"], dose("so-far", { ml: 300, route: "root" })],
    ]);
  });
});

describe("h, p and a: heparin, protamine, ACT", () => {
  const heparin = (amount: number) => ({ kind: "drug", name: "heparin", amount, unit: "[IU]" });
  each(idle, [
    [
      ["h 28000", "h28000", "h 28 000", "h 28k", "h 28 K", "h 28000IU", "h 28kIU", "h 280mg"],
      heparin(28_000),
    ],
    [["h 28.5k", "h 28,5k"], heparin(28_500)],
    [["p 280", "p280mg", "p 280 MG"], { kind: "drug", name: "protamine", amount: 280, unit: "mg" }],
    [["a 512", "a512s", "a 512 s"], { kind: "act", seconds: 512 }],
  ]);
  describe("where a unit counts heparin in milligrams", () => {
    const inMg = { ...adultProtocol, shown: { ...adultProtocol.shown, heparin: "mg" as const } };
    each(openedCase(inMg), [[["h 280", "h 280mg", "h 28000IU", "h 28k"], heparin(28_000)]]);
  });
});

describe("f and t: orders", () => {
  each(idle, [
    [["f 4.5", "f 4,5", "f4.5", "f 4.5 L/min", "f 4.5l"], { kind: "flow", litresPerMinute: 4.5 }],
    [["f 0"], { kind: "flow", litresPerMinute: 0 }],
    [["f full", "f FULL"], { kind: "flow", fraction: 1 }],
    [["f 3/4"], { kind: "flow", fraction: 0.75 }],
    [["f 1/2"], { kind: "flow", fraction: 0.5 }],
    [["f 1/4"], { kind: "flow", fraction: 0.25 }],
    [["t 32", "t32", "t 32C", "t 32 °C", "t 32.0"], { kind: "target", celsius: 32 }],
    [["t 32,5"], { kind: "target", celsius: 32.5 }],
  ]);
});

describe("v, u, o, r and l: volumes", () => {
  const volume = (direction: string, fluid: string, rest: object) => ({
    kind: "volume",
    direction,
    fluid,
    ...rest,
  });
  each(idle, [
    [
      ["v 500 c", "v 500c", "v c 500", "v500 C", "v 500 ml c", "v 0.5L c", "v 0,5 L c"],
      volume("in", "crystalloid", { ml: 500 }),
    ],
    [["v 5 c"], volume("in", "crystalloid", { ml: 5 })],
    [["v 300 r"], volume("in", "red-cells", { ml: 300 })],
    [["v 1300f"], volume("in", "prime", { ml: 1300 })],
    [["u 150", "u150", "u 150ml", "u 0.15L"], volume("out", "urine", { ml: 150 })],
    [["u =450", "u= 450", "u = 450ml", "u =0.45L"], volume("out", "urine", { bagTotal: 450 })],
    [["o 400 u"], volume("out", "ultrafiltrate", { ml: 400 })],
    [["o s 50"], volume("out", "shed-blood", { ml: 50 })],
    [["r 100", "r 0.1L"], volume("returned", "pump-blood", { ml: 100 })],
    [["l 800", "l 0.8L", "l 800 ml"], { kind: "level", ml: 800 }],
  ]);
});

describe("m: moments and spans", () => {
  const span = (what: string, state: string, rest: object = {}) => ({ kind: "span", what, state, ...rest });
  each(idle, [
    [["m d", "md", "m D"], { kind: "moment", what: "heart-de-aired" }],
    [["m s", "m s on"], span("suckers", "on")],
    [["m s off"], span("suckers", "off")],
    [["m ca", "m c a", "mca", "m c a on"], span("cerebral-perfusion", "on", { way: "antegrade" })],
    [["m c"], span("cerebral-perfusion", "on")],
  ]);
  describe("with them on", () => {
    each(typed(["09:00 m s", "09:01 m ca"]), [
      [["m s", "m s off"], span("suckers", "off")],
      [["m c", "m ca", "m c off", "m ca off"], span("cerebral-perfusion", "off")],
      [["m cr"], span("cerebral-perfusion", "on", { way: "retrograde" })],
    ]);
  });
});

describe("w: reminders", () => {
  const reminder = (clock: string, text: string, about: string) => ({
    kind: "reminder",
    dueAt: `2026-03-04T${clock}.000+01:00`,
    text,
    about,
  });
  each(typed(["09:00 w 5 gas"]), [
    [["w 20", "w20"], reminder("12:20:00", "next arrest dose", "other")],
    [["w 15 blood gas"], reminder("12:15:00", "blood gas", "other")],
    [["w 1,5 clot"], reminder("12:01:30", "clot", "other")],
    [["w 15 blood gas @11:50"], reminder("12:05:00", "blood gas", "other")],
    [["w ok", "wOK"], { kind: "reminder-done", target: "e2" }],
    [["w +5"], { kind: "amend", target: "e2", changes: { dueAt: "2026-03-04T12:05:00.000+01:00" } }],
  ]);
  each(typed(["09:00 x"]), [[["w 20"], reminder("12:20:00", "next arrest dose", "dose")]]);
});

describe("n and e: words", () => {
  each(idle, [
    [
      ["n surgeon asks for 50 mmHg", "nsurgeon asks  for 50 mmHg"],
      { kind: "note", text: "surgeon asks for 50 mmHg" },
    ],
    [["e chatter"], { kind: "incident", text: "chatter" }],
    [["n 冷却 🫀"], { kind: "note", text: "冷却 🫀" }],
  ]);
});

describe("i: drugs", () => {
  const drug = (name: string, amount: number, unit: string) => ({ kind: "drug", name, amount, unit });
  each(idle, [
    [["i norad 10", "i noradrenaline 10 ug", "i NORAD 10mcg"], drug("noradrenaline", 10, "ug")],
    [["i house brew 5 mL"], drug("house brew", 5, "mL")],
  ]);
});

test("what was typed is kept to the letter", () => {
  const outcome = logged(idle, "  d 300 r @11:50 ; cold  ", at("12:00"));
  expect(outcome.ok && outcome.value.entries.at(-1)).toMatchObject({
    typed: "d 300 r @11:50 ; cold",
    at: "2026-03-04T11:50:00.000+01:00",
    loggedAt: "2026-03-04T12:00:00.000+01:00",
    by: "AB",
    note: "cold",
    ml: 300,
  });
});

describe("a note after ;", () => {
  test.each([
    ["a 512; after 5000 IU", "after 5000 IU"],
    ["a 512 ;after 5000 IU;  twice", "after 5000 IU;  twice"],
    ["a 512 ;", undefined],
    ["a 512; @11:00", "@11:00"],
  ])("%s", (line, note) => {
    expect((draftOf(idle, line) as { note?: string }).note).toBe(note);
  });
});

/** Keys pressed for a stroke give what the stroke gives when it is logged as one line. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keysFor } from "../../src/console/keys-for.ts";
import { openModel } from "../../src/console/model.ts";
import { logged } from "../../src/console/read-stroke.ts";
import { STROKES } from "../../src/console/strokes/table.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Entry } from "../../src/record/entry.ts";
import { entriesOf, press } from "../helpers/console-keys.ts";
import { at, refusal, typed } from "../helpers/typed-case.ts";

const file = typed([
  ...[
    "08:00 k weight=80 height=178 prime=1400",
    "08:30 c b identity",
    "08:40 h 28000",
    "08:50 a 500",
    "09:00 b",
  ],
  ...["09:05 s flow=4.7 MAP=45 art=33", "09:06 g pH=7.4 Hb=9", "09:10 x", "09:12 u 100", "09:20 w 5 gas"],
]);
const now = at("10:00");

/** A form is kept with its fields in order, a tick as its key, a correction with the number it picked. */
const written = ({ entries }: CaseFile | { entries: readonly Entry[] }) =>
  entries.slice(file.entries.length).map(({ typed: _, ...entry }) => entry);

function sameAsLogged(line: string): void {
  const model = press(openModel(file), keysFor(file, line, now), now);
  const expected = logged(file, line, now);
  expect(written({ entries: entriesOf(model) }), line).toEqual(expected.ok ? written(expected.value) : []);
  if (expected.ok) expect(model.mode, line).toEqual({ name: "plain" });
}

const number = fc.integer({ min: 0, max: 2000 }).map(String);
const decimal = fc.double({ min: 0, max: 60, noNaN: true }).map((value) => value.toFixed(1));
const words = fc.array(fc.constantFrom("surgeon", "asks", "65", "ventricle", "µ", "é", "1.4"), {
  minLength: 1,
  maxLength: 4,
});
const end = fc.constantFrom("", " @-3", " @-0:40", " @9:55", " ; said twice", " @-2 ; late");

/** Some fields of a form with numbers or words, in any order. */
const fields = (key: string, ids: readonly string[], value: fc.Arbitrary<string>) =>
  fc
    .uniqueArray(fc.tuple(fc.constantFrom(...ids), value), { minLength: 1, selector: ([id]) => id })
    .map((pairs) => `${key} ${pairs.map(([id, one]) => `${id}=${one}`).join(" ")}`);

const quoted = words.map((list) => `"${list.join(" ")}"`);
const items = adultProtocol.checklists.flatMap(({ letter, items: all }) =>
  all.map(({ id }) => `${letter} ${id}`),
);

const LINES: Readonly<Record<string, fc.Arbitrary<string>>> = {
  bypass: fc.constantFrom("b", "b off", "b on"),
  clamp: fc.constantFrom("x", "x off", "x on"),
  dose: fc.oneof(
    fc.constantFrom("d", "d a", "da t8"),
    number.map((ml) => `d${ml} r p80`),
  ),
  heparin: number.map((iu) => `h ${iu}`),
  protamine: number.map((mg) => `p${mg}`),
  act: number.map((s) => `a ${s}`),
  flow: fc.constantFrom("f full", "f3/4", "f 4.2", "f 99"),
  target: decimal.map((celsius) => `t ${celsius}`),
  "volume-in": number.map((ml) => `v ${ml} r #447108 /TJ`),
  urine: number.map((ml) => `u =${ml}`),
  "volume-out": number.map((ml) => `o${ml}u`),
  returned: number.map((ml) => `r ${ml}`),
  level: number.map((ml) => `l ${ml}`),
  drug: number.map((amount) => `i noradrenaline ${amount} /AB`),
  readings: fields("s", ["flow", "MAP", "CVP", "art", "SvO2", "NIRS-L", "Hct"], decimal),
  gas: fields(
    "g",
    ["sample", "pH", "pCO2", "Hb", "Hct", "K", "stat"],
    fc.oneof(decimal, fc.constantFrom("v", "ph")),
  ),
  moment: fc.constantFrom("m s", "mca", "m1", "muz"),
  remind: fc.constantFrom("w 20 gas", "w", "w ok", "w +5", "w 12"),
  acknowledge: words.map((list) => `! 1 ${list.join(" ")}`),
  incident: words.map((list) => `e ${list.join(" ")}`),
  note: words.map((list) => `n ${list.join(" ")}`),
  handover: fc.constantFrom("y TJ", "y", "ytj"),
  closing: fc.constantFrom(". KM", "."),
  setup: fc.oneof(
    fields("k", ["age", "weight", "Hct", "wanted-Hct", "heparin", "prime"], decimal),
    fields("k", ["number", "allergies", "diagnosis", "operation"], quoted),
  ),
  circuit: fields("j", ["surgeon", "oxygenator", "arterial-cannula", "vent"], quoted),
  checklists: fc
    .tuple(fc.constantFrom(...items), fc.constantFrom("", " n", " u"))
    .map((it) => `c ${it.join("")}`),
  "put-right": fc.oneof(
    number.map((ml) => `z ${ml}`),
    fc.constantFrom("z ! slip", "z@-5", "z #9 @-30"),
  ),
};

describe("the keys of a line", () => {
  test.each(STROKES.filter(({ id }) => LINES[id]))(
    "$key $name write the entries that the line writes",
    ({ id }) => {
      const ends = ["checklists", "flow"].includes(id) ? fc.constant("") : end;
      const lines = fc.tuple(LINES[id] as fc.Arbitrary<string>, ends).map(([line, more]) => line + more);
      fc.assert(fc.property(lines, sameAsLogged), { numRuns: 60 });
    },
  );

  test("are known for every stroke that writes an entry", () => {
    const writing = STROKES.filter(({ opens }) => !["find", "help", "panel", "leave"].includes(opens));
    expect(Object.keys(LINES).toSorted()).toEqual(writing.map(({ id }) => id).toSorted());
  });

  test("of a form with two fields alike but for a capital fill each of them", () => {
    const model = press(openModel(file), keysFor(file, "k Hct=34 wanted-Hct=24", now), now);
    expect(written({ entries: entriesOf(model) })).toMatchObject([
      { kind: "patient", haematocrit: 34 },
      { kind: "plan", targetHaematocrit: 24 },
    ]);
  });
});

describe("a checklist's item ticked by one line", () => {
  test("is done, not applicable or open again, by its name or the beginning of it", () => {
    const ticked = typed(["08:00 c b identity", "08:01 c b allerg n", "08:02 c b identity u"]);
    expect(ticked.entries.slice(1)).toMatchObject([
      { kind: "check", checklist: "before-bypass", item: "identity", state: "done" },
      { kind: "check", checklist: "before-bypass", item: "allergies", state: "not-applicable" },
      { kind: "check", checklist: "before-bypass", item: "identity", state: "open" },
    ]);
  });

  test.each([
    ["c", /^Which checklist: type its letter, 1 sign in, .* or 3 sign out, and an item\.$/],
    ["c b", /^Which item of before bypass: type one of identity, /],
    ["c b nothing", /^Which item of before bypass: type one of identity, /],
    ["c b identity x", /^Behind the item type nothing for done, n for not applicable, or u/],
    ["c b identity", /^before bypass, identity is done already\.$/],
  ])("%s is refused with what to type", (line, says) => {
    expect(refusal(file, line)).toMatch(says);
  });
});

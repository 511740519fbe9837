/** The stroke table: the single source for handling, hint bar, help and documentation. */
import { expect, test } from "vitest";
import { logged } from "../../src/console/read-stroke.ts";
import { act, heparin } from "../../src/console/strokes/coagulation.ts";
import { findStrokes, STROKES, strokeFor, strokesOf } from "../../src/console/strokes/table.ts";
import { PHASES } from "../../src/figures/phase.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Drug } from "../../src/protocol/drugs.ts";
import { paediatricProtocol } from "../../src/protocol/paediatric.ts";
import { at, openedCase, refusal, runAt, typed } from "../helpers/typed-case.ts";

const entryStrokes = STROKES.filter((stroke) => stroke.opens === "line");

test("no two strokes share a key or a name of their own", () => {
  for (const field of ["key", "id", "name"] as const) {
    const all = STROKES.map((stroke) => stroke[field]);
    expect(all).toEqual([...new Set(all)]);
  }
});

test("every stroke that writes an entry has an example that works on bypass without heparin", () => {
  for (const protocol of [adultProtocol, paediatricProtocol])
    for (const { example } of entryStrokes)
      expect(logged(typed(["09:00 b"], protocol), example, at("10:00")), example).toMatchObject({ ok: true });
});

test("every stroke that writes an entry asks something in every phase, on one line", () => {
  const cases = [
    typed([]),
    typed(["08:40 h 28000", "09:00 b"]),
    typed(["09:00 b", "09:10 x", "09:11 d", "09:12 d 300+"]),
    typed(["09:00 b", "10:00 b", "10:01 l 800"]),
  ];
  for (const file of cases) {
    const context = { run: runAt(file, "12:00"), at: at("12:00") };
    for (const stroke of entryStrokes) expect(stroke.asks(context), stroke.id).toMatch(/^[^\n]{2,100}$/);
  }
});

test("heparin asks by the plan before the protocol, and once some was given says how much", () => {
  const asks = (lines: readonly string[], protocol = adultProtocol) =>
    heparin.asks({ run: runAt(typed(lines, protocol), "12:00"), at: at("12:00") });
  const inMg = { ...adultProtocol, shown: { ...adultProtocol.shown, heparin: "mg" as const } };
  expect(asks([])).toBe("IU");
  expect(asks(["08:00 k weight=80"])).toBe("IU (400 IU/kg × 80 kg = 32 000 IU)");
  expect(asks(["08:00 k weight=80 heparin=300"])).toBe("IU (300 IU/kg × 80 kg = 24 000 IU)");
  expect(asks(["08:00 k weight=80"], inMg)).toBe("mg at 100 IU/mg (400 IU/kg × 80 kg = 320 mg = 32 000 IU)");
  expect(asks(["08:00 k weight=80", "08:10 h 5000 p"])).toContain("= 32 000 IU)");
  expect(asks(["08:00 k weight=80", "08:40 h 28000", "10:00 h 5000"])).toBe("IU (so far 33 000 IU)");
});

test("ACT asks for cannulation's target too until bypass has begun", () => {
  const asks = (lines: readonly string[]) => act.asks({ run: runAt(typed(lines), "12:00"), at: at("12:00") });
  expect(asks([])).toBe("seconds (target 300 for cannulation, 480 for bypass)");
  expect(asks(["09:00 b"])).toBe("seconds (target 480)");
});

test("a drug named without a dose says the protocol's usual one, and is not written", () => {
  const [first, ...others] = adultProtocol.drugs;
  const unit = { ...adultProtocol, drugs: [{ ...(first as Drug), usualDose: 10 }, ...others] };
  expect(refusal(openedCase(unit), `i ${first?.name}`)).toMatch(/type the dose in \S+ \(usually 10\)\.$/);
  expect(refusal(openedCase(), `i ${first?.name}`)).toMatch(/type the dose in \S+\.$/);
});

test("the lists of choices hold every letter of the protocol once", () => {
  const context = { run: runAt(openedCase(), "09:00"), at: at("09:00") };
  const letters = (id: string) =>
    entryStrokes
      .find((stroke) => stroke.id === id)
      ?.choices?.(context, "")
      .map(([letter]) => letter.charAt(0));
  expect(letters("moment")).toEqual(adultProtocol.marks.map(({ letter }) => letter));
  expect(letters("volume-in")).toEqual(adultProtocol.fluidsIn.map(({ letter }) => letter));
  expect(letters("volume-out")).toEqual(adultProtocol.fluidsOut.map(({ letter }) => letter));
  expect(letters("dose")).toEqual(["a", "l", "r", "s", "g"]);
});

test("every phase has strokes that it makes likely", () => {
  for (const phase of PHASES)
    expect(STROKES.filter(({ likely }) => likely.includes(phase)).length, phase).toBeGreaterThan(3);
});

test("a protocol gives a stroke another key", () => {
  const protocol = { ...adultProtocol, keys: { dose: "K" } };
  expect(strokeFor("K", protocol)?.id).toBe("dose");
  expect(strokeFor("d", protocol)).toBeUndefined();
  expect(strokesOf(protocol).length).toBe(STROKES.length);
  expect(logged(openedCase(protocol), "K 300", at("10:00"))).toMatchObject({ ok: true });
});

test("a search looks in names first, then in what the line takes", () => {
  const found = (query: string) => findStrokes(query, adultProtocol).map(({ id }) => id);
  expect(found("clamp")[0]).toBe("clamp");
  expect(found("URINE ")[0]).toBe("urine");
  expect(found("coronary sinus")).toEqual(["dose"]);
  expect(found("")).toEqual(STROKES.map(({ id }) => id));
  expect(found("xylophone")).toEqual([]);
});

/** Heparin, protamine and ACT. */
import { describe, expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { at, given, minutes, openedCase, runAt, typed, typedOn } from "../helpers/typed-case.ts";

const weighed = given(openedCase(), { kind: "patient", weight: 70 }, "07:10");
const coagulation = (lines: readonly string[], clock = "12:00") =>
  runAt(typedOn(weighed, lines), clock).coagulation;

const withCoagulation = (changes: Partial<Protocol["coagulation"]>): Protocol => ({
  ...adultProtocol,
  coagulation: { ...adultProtocol.coagulation, ...changes },
});

describe("heparin", () => {
  const lines = ["08:40 h 21000", "08:50 h 5000", "09:30 h 5000"];

  test("in the prime counts in the total, and is neither the first dose nor the last", () => {
    const { heparinTotal, heparinFirst, heparinAge } = coagulation(
      ["08:40 h 21000", "08:50 h 5000 p"],
      "09:00",
    );
    expect([heparinTotal.value, heparinFirst.value, heparinAge]).toEqual([26_000, 21_000, minutes(20)]);
    expect(coagulation(["08:50 h 5000 p"], "09:00").heparinAge).toBeNull();
  });

  test("is the total, the first dose by itself, the total for each kilogram, and the age of the last", () => {
    const { heparinTotal, heparinFirst, heparinPerKg, heparinAge } = coagulation(lines, "10:00");
    expect([heparinTotal.value, heparinFirst.value, heparinPerKg.value?.toFixed(1), heparinAge]).toEqual([
      31_000,
      21_000,
      "442.9",
      minutes(30),
    ]);
    expect(heparinTotal.working).toBe("21000 + 5000 + 5000");
  });

  test("that was given first but told last is the first dose", () => {
    expect(coagulation(["08:50 h 5000", "09:00 h 21000 @8:40"]).heparinFirst.value).toBe(21_000);
  });

  test("without any nothing is known", () => {
    const { heparinTotal, heparinPerKg, heparinAge, protamineSuggested, protamineMost } = coagulation([]);
    expect([
      heparinTotal.value,
      heparinPerKg.value,
      heparinAge,
      protamineSuggested.value,
      protamineMost.value,
    ]).toEqual([null, null, null, null, null]);
    expect(protamineSuggested.working).toBe("no heparin recorded");
  });

  test("for each kilogram is not known without a weight", () => {
    const { heparinPerKg } = runAt(typed(lines), "10:00").coagulation;
    expect(heparinPerKg).toMatchObject({ value: null, working: "no weight recorded" });
  });

  test("struck out leaves no protamine to give for it", () => {
    expect(coagulation([...lines, "09:31 z ! not given"]).protamineOnTotal.value).toBe(260);
  });
});

describe("protamine", () => {
  const lines = ["08:40 h 21000", "08:50 h 10000"];

  test("is suggested on the basis that the protocol says, and both bases are shown", () => {
    const suggested = (["first", "total"] as const).map((protamineBase) => {
      const file = typed(lines, withCoagulation({ protamineBase }));
      const { protamineSuggested, protamineOnFirst, protamineOnTotal } = runAt(file, "12:00").coagulation;
      return [protamineSuggested, protamineOnFirst, protamineOnTotal].map(({ value }) => value);
    });
    expect(suggested).toEqual([
      [210, 210, 310],
      [310, 210, 310],
    ]);
  });

  test("follows the protocol's ratio, and says how it was made and on whose word", () => {
    const protocol = withCoagulation({ protamineRatio: { value: 0.8, source: "our unit" } });
    const { protamineOnFirst } = runAt(typed(lines, protocol), "12:00").coagulation;
    expect(protamineOnFirst).toEqual({
      value: 168,
      unit: "mg",
      working: "0.8 mg for each 100 IU of first heparin 21000 IU",
      source: "our unit",
    });
  });

  test("given is the sum of what was given", () => {
    expect(coagulation([]).protamineGiven.value).toBeNull();
    expect(coagulation(["10:30 p 50", "10:35 p 160"]).protamineGiven.value).toBe(210);
  });
});

describe("the last ACT", () => {
  const last = (lines: readonly string[], clock = "10:00") => runAt(typed(lines), clock).act;

  test("is the last that was taken, with its age and when the next is due", () => {
    expect(last(["08:45 a 512", "09:30 a 470"])).toEqual({
      seconds: 470,
      age: minutes(30),
      target: 480,
      met: false,
      due: at("10:00").ms,
    });
  });

  test("is by the time it was taken, not told", () => {
    expect(last(["09:30 a 470", "09:50 a 512 @9:00"])?.seconds).toBe(470);
  });

  test("meets its target at the target", () => {
    expect([479, 480, 481].map((seconds) => last([`09:00 a ${seconds}`])?.met)).toEqual([false, true, true]);
  });

  test("is none before the first", () => {
    expect(last([])).toBeNull();
  });
});

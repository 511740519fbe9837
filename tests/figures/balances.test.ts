/** Running balances. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Balances } from "../../src/figures/balances.ts";
import { readRun } from "../../src/figures/run.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { at, minutes, openedCase, runAt, typed } from "../helpers/typed-case.ts";

const values = (balances: Balances) =>
  Object.fromEntries(Object.entries(balances).map(([name, { value }]) => [name, value]));

const wholeRun = [
  ...["08:30 v 1300 f", "08:31 v 100 m", "09:10 d 1000", "09:15 u 120", "09:30 d 300", "09:31 v 500 c"],
  ...["09:40 u 80", "09:50 o 700 u", "09:55 o 50 s", "10:20 r 150", "10:25 r 200"],
];

test("nothing recorded is not nought", () => {
  const { balances } = runAt(openedCase(), "09:00").course;
  expect(Object.values(balances).map(({ value }) => value)).toEqual(Array(9).fill(null));
  expect(balances.fluidIn.working).toBe("no volume in recorded");
});

test("a whole run adds up", () => {
  const { balances } = runAt(typed(wholeRun), "11:00").course;
  expect(values(balances)).toEqual({
    arrestGiven: 1300,
    arrestCrystalloid: 260,
    fluidIn: 1900 + 260,
    urine: 200,
    ultrafiltrate: 700,
    otherOut: 50,
    out: 950,
    net: 2160 - 950,
    returned: 350,
  });
  expect(balances.net.working).toBe("in 2160 − out 950");
  expect(balances.out.working).toBe("urine 200 + ultrafiltrate 700 + other 50");
});

test("a unit that discards the crystalloid part does not count it as fluid in", () => {
  const { balances } = runAt(
    typed(wholeRun, { ...adultProtocol, solutionCountsAsFluid: false }),
    "11:00",
  ).course;
  expect(balances.fluidIn.value).toBe(1900);
  expect(balances.fluidIn.working).toBe(
    "volumes 1900 + crystalloid of arrest solution not counted (protocol)",
  );
});

test("volume out alone has a net below nought", () => {
  expect(runAt(typed(["09:15 u 120"]), "10:00").course.balances.net.value).toBe(-120);
});

describe("urine", () => {
  const urine = (lines: readonly string[]) => runAt(typed(lines), "12:00").course.balances.urine.value;

  test.each<[string, string[], number]>([
    ["is the sum of what was measured", ["09:00 u 100", "09:30 u 50"], 150],
    ["is what the bag reads", ["09:00 u =450"], 450],
    ["by the bag counts what it gained", ["09:00 u 100", "09:30 u =450"], 450],
    ["after the bag adds to it", ["09:00 u =450", "09:30 u 50"], 500],
    ["by the bag twice is the last reading", ["09:00 u =450", "09:30 u =600"], 600],
    [
      "by the bag stands when an earlier amount is put right",
      ["09:00 u 100", "09:30 u =450", "09:40 z #2 200"],
      450,
    ],
    [
      "by the bag stands when an earlier amount is struck out",
      ["09:00 u 100", "09:30 u =450", "09:40 z #2 ! slip"],
      450,
    ],
    ["by the bag stands when an amount is told late", ["09:30 u =450", "09:40 u 60 @9:10"], 450],
    ["by the bag put right to new urine adds", ["09:00 u 100", "09:30 u =450", "09:40 z 450"], 550],
    ["put right to the bag is what the bag reads", ["09:00 u 100", "09:30 u 450", "09:40 z =450"], 450],
  ])("%s", (_, lines, ml) => {
    expect(urine(lines)).toBe(ml);
  });
});

/** What a person with a pencil makes of the record: no reading of the bag among the entries. */
function byHand({ entries }: CaseFile): { [name: string]: number | null } {
  const struck = new Set<string>();
  for (const entry of [...entries].reverse()) {
    if (entry.kind === "void" && !struck.has(entry.id)) struck.add(entry.target);
  }
  const amountOf = (id: string, first: number): number => {
    let ml = first;
    for (const entry of entries) {
      if (entry.kind !== "amend" || entry.target !== id || struck.has(entry.id)) continue;
      if (typeof entry.changes.ml === "number") ml = entry.changes.ml;
    }
    return ml;
  };
  const sums: { [name: string]: number | null } = {
    in: null,
    urine: null,
    ultrafiltrate: null,
    other: null,
    returned: null,
  };
  for (const entry of entries) {
    if (entry.kind !== "volume" || struck.has(entry.id)) continue;
    const { direction, fluid } = entry;
    const name =
      direction !== "out" ? direction : fluid === "urine" || fluid === "ultrafiltrate" ? fluid : "other";
    sums[name] = (sums[name] ?? 0) + amountOf(entry.id, entry.ml ?? 0);
  }
  return sums;
}

test("balances equal the sum of the entries that stand, whatever was typed and put right", () => {
  const later = at("20:00").ms + minutes(60 * 24);
  fc.assert(
    fc.property(anyRun(40), (run) => {
      const file = play(run.filter(({ line }) => !line.includes("u =")));
      const { balances } = readRun(file, later).course;
      const hand = byHand(file);
      const crystalloid = balances.arrestCrystalloid.value;
      expect(balances.urine.value).toBe(hand.urine);
      expect(balances.ultrafiltrate.value).toBe(hand.ultrafiltrate);
      expect(balances.otherOut.value).toBe(hand.other);
      expect(balances.returned.value).toBe(hand.returned);
      const out = (hand.urine ?? 0) + (hand.ultrafiltrate ?? 0) + (hand.other ?? 0);
      expect(balances.out.value ?? 0).toBeCloseTo(out, 6);
      expect(balances.fluidIn.value ?? 0).toBeCloseTo((hand.in ?? 0) + (crystalloid ?? 0), 6);
      expect(balances.net.value ?? 0).toBeCloseTo((hand.in ?? 0) + (crystalloid ?? 0) - out, 6);
      expect(crystalloid ?? 0).toBeCloseTo((balances.arrestGiven.value ?? 0) / 5, 6);
    }),
    { numRuns: 200 },
  );
});

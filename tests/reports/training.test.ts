// Typing along: what counts as an answer, how soon it came, and what was wrong with it.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { msOf } from "../../src/format/instant.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { type Order, scoreOf } from "../../src/reports/training.ts";
import { trainingText } from "../../src/reports/training-text.ts";
import { at, typed } from "../helpers/typed-case.ts";

/** Orders said at a time of day, each with the line that answers it. */
const ordersFor = (...lines: readonly string[]): Order[] =>
  typed(lines)
    .entries.slice(1)
    .map((expected) => ({ says: `order ${expected.seq}`, at: msOf(expected.at), expected }));

const orders = ordersFor("08:00 b", "08:01 x", "08:02 d 300 r", "08:05 a 480");
const verdicts = (lines: readonly string[]) =>
  scoreOf(orders, typed(lines)).answers.map(({ verdict }) => verdict);

describe("an order", () => {
  test("is answered right by the entry it asks for, and the delay is from the order to the first key", () => {
    const { answers, extra, corrections } = scoreOf(
      orders,
      typed(["08:00:04 b", "08:01:10 x", "08:02:02 d 300 r", "08:05:30 a 480"]),
    );
    expect(answers.map(({ verdict, delay }) => [verdict, delay])).toEqual([
      ["right", 4000],
      ["right", 10_000],
      ["right", 2000],
      ["right", 30_000],
    ]);
    expect([extra, corrections]).toEqual([[], 0]);
  });

  test("answered with another volume or another route is wrong", () => {
    expect(verdicts(["08:02:02 d 350 r"])).toEqual(["missed", "missed", "wrong", "missed"]);
    expect(verdicts(["08:02:02 d 300 a"])).toEqual(["missed", "missed", "wrong", "missed"]);
  });

  test("answered wrong and then corrected is put right", () => {
    const lines = ["08:02:02 d 350 r", "08:02:20 z 300"];
    expect(verdicts(lines)[2]).toBe("put right");
    expect(scoreOf(orders, typed(lines)).corrections).toBe(1);
  });

  test("is not answered by an entry that was struck out, or that came before it", () => {
    expect(verdicts(["08:02:02 d 300 r", "08:02:20 z ! slip"])[2]).toBe("missed");
    expect(verdicts(["08:01:59 d 300 r"])[2]).toBe("missed");
  });

  test("answered with a time of its own is as late as its first key, not as the time that was given", () => {
    const { answers } = scoreOf(orders, typed(["08:05:40 a 480 @-0:30"]));
    expect(answers[3]).toMatchObject({ verdict: "right", delay: 40_000 });
  });

  test("is answered once: what comes besides had not been asked for, and a note is nobody's mistake", () => {
    const { extra } = scoreOf(orders, typed(["08:05:10 a 480", "08:05:20 a 480", "08:05:30 n all well"]));
    expect(extra.map(({ entry }) => entry.kind)).toEqual(["act"]);
  });
});

test("every order has one answer, every entry answers one order at most, and nothing comes before it was asked", () => {
  const line = fc.constantFrom("b", "x", "d 300 r", "d 350", "a 480", "a 100", "n words", "u 40", "z ! slip");
  fc.assert(
    fc.property(fc.array(line, { maxLength: 10 }), (lines) => {
      let entered: string[] = [];
      for (const [i, one] of lines.entries()) {
        const next = [...entered, `08:0${i}:30 ${one}`];
        try {
          typed(next);
          entered = next;
        } catch {
          // The console refused it, so that nothing was written.
        }
      }
      const { answers, extra } = scoreOf(orders, typed(entered));
      expect(answers).toHaveLength(orders.length);
      const used = [
        ...answers.flatMap(({ fact }) => fact?.entry.id ?? []),
        ...extra.map(({ entry }) => entry.id),
      ];
      expect(new Set(used).size).toBe(used.length);
      for (const { delay } of answers) expect(delay ?? 0).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 60 },
  );
});

test("the result says how many were right, how soon, and what was asked where the answer was wrong", () => {
  const score = scoreOf(orders, typed(["08:00:04 b", "08:01:10 x", "08:02:02 d 350 r", "08:05:10 u 40"]));
  const text = trainingText(score, 24, adultProtocol);
  expect(text).toContain("4 of 24 orders were said: 2 right, 0 put right, 1 wrong, 1 missed.");
  expect(text).toContain("median 4.0 s, longest 10.0 s");
  expect(text).toMatch(/wrong: .*350 mL/);
  expect(text).toMatch(/asked\s+was/);
  expect(text).toContain("Entries nobody asked for: 1.");
  expect(Math.max(...text.split("\n").map((one) => one.length))).toBeLessThanOrEqual(78);
  expect(trainingText(scoreOf([], typed([])), 24, adultProtocol)).toContain("0 of 24 orders");
  expect(at("08:00").offset).toBe(60);
});

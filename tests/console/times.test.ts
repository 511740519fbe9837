/** Times given on an entry line. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLine } from "../../src/console/line.ts";
import { timeGiven } from "../../src/console/time-given.ts";
import { clockTime, fromIso, type Instant, toIso } from "../../src/format/instant.ts";

const instant = (iso: string) => fromIso(iso) as Instant;
const noon = instant("2026-03-04T12:00:30.500+01:00");

const given = (word: string, now: Instant = noon): string => {
  const outcome = timeGiven(word, now);
  return outcome.ok ? toIso(outcome.value) : outcome.fault;
};

describe("a time of day", () => {
  test.each([
    ["@10:42", "2026-03-04T10:42:00.000+01:00"],
    ["@10:42:30", "2026-03-04T10:42:30.000+01:00"],
    ["@9:05", "2026-03-04T09:05:00.000+01:00"],
    ["@12:00:30", "2026-03-04T12:00:30.000+01:00"],
    ["@12:00:31", "2026-03-03T12:00:31.000+01:00"],
    ["@12:01", "2026-03-03T12:01:00.000+01:00"],
    ["@0:00", "2026-03-04T00:00:00.000+01:00"],
    ["@23:59", "2026-03-03T23:59:00.000+01:00"],
  ])("%s is the nearest one that is not in the future", (word, iso) => {
    expect(given(word)).toBe(iso);
  });

  test.each([
    ["across midnight", "2026-03-05T00:10:00.000+01:00", "@23:50", "2026-03-04T23:50:00.000+01:00"],
    [
      "across the turn of the year",
      "2027-01-01T00:10:00.000+01:00",
      "@23:50",
      "2026-12-31T23:50:00.000+01:00",
    ],
    ["half an hour off the hour", "2026-03-05T00:10:00.000+05:30", "@23:50", "2026-03-04T23:50:00.000+05:30"],
    [
      "west of Greenwich by a half hour",
      "2026-03-04T20:40:00.000-03:30",
      "@20:35",
      "2026-03-04T20:35:00.000-03:30",
    ],
    [
      "where UTC is in tomorrow already",
      "2026-03-04T21:00:00.000-08:00",
      "@20:59",
      "2026-03-04T20:59:00.000-08:00",
    ],
  ])("%s", (_, now, word, iso) => {
    expect(given(word, instant(now))).toBe(iso);
  });

  test("of this very moment is now", () => {
    const sharp = instant("2026-03-04T12:00:00.000+01:00");
    expect(given("@12:00", sharp)).toBe(toIso(sharp));
  });

  test("is that time of day at most a day ago, whatever the offset", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(2020, 0), max: Date.UTC(2040, 0) }),
        fc.integer({ min: -48, max: 56 }).map((quarters) => quarters * 15),
        fc.integer({ min: 0, max: 86_399 }),
        (ms, offset, second) => {
          const clock = new Date(second * 1000).toISOString().slice(11, 19);
          const outcome = timeGiven(`@${clock}`, { ms, offset });
          const at = outcome.ok ? outcome.value : null;
          expect(at && clockTime(at)).toBe(clock);
          expect(ms - (at?.ms ?? 0)).toBeGreaterThanOrEqual(0);
          expect(ms - (at?.ms ?? 0)).toBeLessThan(86_400_000);
        },
      ),
    );
  });
});

describe("a time ago", () => {
  test.each([
    ["@-3", "2026-03-04T11:57:30.500+01:00"],
    ["@-0", "2026-03-04T12:00:30.500+01:00"],
    ["@-0:40", "2026-03-04T11:59:50.500+01:00"],
    ["@-2:05", "2026-03-04T11:58:25.500+01:00"],
    ["@-90", "2026-03-04T10:30:30.500+01:00"],
    ["@-90:30", "2026-03-04T10:30:00.500+01:00"],
    ["@-1:05:00", "2026-03-04T10:55:30.500+01:00"],
    ["@-999", "2026-03-03T19:21:30.500+01:00"],
  ])("%s", (word, iso) => {
    expect(given(word)).toBe(iso);
  });
});

describe("nonsense", () => {
  test.each(["@24:00", "@10:60", "@10:42:60", "@99:99"])("%s is no time of day", (word) => {
    expect(given(word)).toBe(`${word} is no time of day: type @10:42 or @10:42:30.`);
  });

  test.each([
    ...[
      "@",
      "@-",
      "@10",
      "@1042",
      "@10:4",
      "@10:42:3",
      "@10:42:30:1",
      "@+3",
      "@-3.5",
      "@--3",
      "@-0:99",
      "@-0:4",
    ],
    ...["@-5:300", "@-1000", "@:", "@10.42"],
  ])("%s is not a time", (word) => {
    expect(given(word)).toBe(
      `${word} is not a time: type @10:42, @10:42:30, @-3 for three minutes ago, or @-0:40.`,
    );
  });
});

describe("on a line", () => {
  const line = (typed: string) => {
    const outcome = readLine(typed, noon);
    return outcome.ok ? { ...outcome.value, at: outcome.value.at && toIso(outcome.value.at) } : outcome.fault;
  };

  test("a time may stand anywhere, and the last one counts", () => {
    const expected = { words: ["300", "r"], text: "300 r", at: "2026-03-04T10:42:00.000+01:00", note: null };
    for (const typed of ["300 r @10:42", "@10:42 300 r", " 300  @10:42 r ", "@9:00 300 r @10:42"])
      expect(line(typed)).toEqual(expected);
  });

  test("a time in the note is part of the note", () => {
    expect(line("300 ; at @10:42")).toEqual({ words: ["300"], text: "300", at: null, note: "at @10:42" });
  });

  test("a word with @ that is no attempt at a time is a word", () => {
    expect(line("call @noon a@b")).toMatchObject({ text: "call @noon a@b", at: null });
  });

  test("one time that is none refuses the line, whatever the others are", () => {
    expect(line("300 @25:00 @10:42")).toBe("@25:00 is no time of day: type @10:42 or @10:42:30.");
  });
});

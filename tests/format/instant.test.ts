/** Instants as ISO 8601 with their offset, held against a general-purpose date library. */
import fc from "fast-check";
import { DateTime, FixedOffsetZone } from "luxon";
import { describe, expect, test } from "vitest";
import { clockTime, clockTimeOf, dayOf, fromIso, msOf, toIso } from "../../src/format/instant.ts";

const anyInstant = fc.record({
  ms: fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2090, 0, 1) }),
  offset: fc.integer({ min: -14 * 60, max: 14 * 60 }),
});

describe("writing", () => {
  test.each([
    [60, "2026-03-04T10:42:30.120+01:00"],
    [0, "2026-03-04T09:42:30.120+00:00"],
    [-210, "2026-03-04T06:12:30.120-03:30"],
    [345, "2026-03-04T15:27:30.120+05:45"],
  ])("at an offset of %d minutes", (offset, text) => {
    expect(toIso({ ms: Date.UTC(2026, 2, 4, 9, 42, 30, 120), offset })).toBe(text);
  });

  test("is what the date library writes, and reads back the same", () => {
    fc.assert(
      fc.property(anyInstant, (instant) => {
        const theirs = DateTime.fromMillis(instant.ms, { zone: FixedOffsetZone.instance(instant.offset) });
        expect(toIso(instant)).toBe(theirs.toFormat("yyyy-MM-dd'T'HH:mm:ss.SSSZZ"));
        expect(fromIso(toIso(instant))).toEqual(instant);
        expect(msOf(toIso(instant))).toBe(instant.ms);
        expect(clockTime(instant)).toBe(theirs.toFormat("HH:mm:ss"));
      }),
    );
  });
});

describe("reading", () => {
  test.each([
    "",
    "10:42",
    "2026-03-04",
    "2026-03-04T10:42:30",
    "2026-03-04 10:42:30Z",
    "2026-03-04T10:42Z",
    "2026-02-30T10:42:30Z",
    "2026-02-29T10:42:30Z",
    "2026-13-01T10:42:30Z",
    "2026-03-04T24:00:00Z",
    "2026-03-04T10:60:00Z",
    "2026-03-04T10:42:30+25:00",
    "2026-03-04T10:42:30.000+01:00 or so",
  ])("%j is no instant", (text) => {
    expect(fromIso(text)).toBeNull();
  });

  test("of any figures in their places is what the date library makes of them", () => {
    const two = (max: number) => fc.integer({ min: 0, max }).map((n) => String(n).padStart(2, "0"));
    const date = fc.tuple(fc.constantFrom("1999", "2000", "2026", "2028"), two(14), two(34));
    const clock = fc.tuple(two(25), two(61), two(61));
    const zone = fc.oneof(fc.constant("Z"), fc.tuple(fc.constantFrom("+", "-"), two(13), two(59)));
    fc.assert(
      fc.property(date, clock, zone, (days, hours, at) => {
        const offset = typeof at === "string" ? at : `${at[0]}${at[1]}:${at[2]}`;
        const text = `${days.join("-")}T${hours.join(":")}${offset}`;
        const theirs = DateTime.fromISO(text);
        const isTime = theirs.isValid && hours[0] !== "24";
        expect(fromIso(text)?.ms ?? null).toBe(isTime ? theirs.toMillis() : null);
      }),
      { numRuns: 1000 },
    );
  });

  test("Z is the offset nought, and a leap day is a day", () => {
    expect(fromIso("2028-02-29T10:42:30Z")).toEqual({ ms: Date.UTC(2028, 1, 29, 10, 42, 30), offset: 0 });
  });

  test("a recorded time shows the wall clock where it was written", () => {
    const written = "2026-03-04T23:10:05.000-08:00";
    expect([dayOf(written), clockTimeOf(written)]).toEqual(["2026-03-04", "23:10:05"]);
  });
});

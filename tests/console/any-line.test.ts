/** Whatever stands in the line: a valid entry, or one clear sentence. Never a throw, never an entry that cannot be kept. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { logged } from "../../src/console/read-stroke.ts";
import { STROKES } from "../../src/console/strokes/table.ts";
import { entryWords } from "../../src/figures/entry-words.ts";
import { readRun } from "../../src/figures/run.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { entrySchema } from "../../src/record/entry.ts";
import { faultOf } from "../../src/record/reading-a-file.ts";
import { standing } from "../../src/record/standing.ts";
import { anyText } from "../helpers/any-text.ts";
import { at, openedCase, typed } from "../helpers/typed-case.ts";

const now = at("12:00");

const cases: readonly CaseFile[] = [
  openedCase(),
  typed(["08:40 h 28000", "09:00 b", "09:10 x", "09:11 d a", "09:12 u 100", "09:13 w 20 gas"]),
  typed([
    ...[
      "08:30 v 1300 f",
      "08:40 h 28000",
      "09:00 b",
      "09:02 f full",
      "09:10 x",
      "09:11 d 900 a",
      "09:20 m ca",
    ],
    ...[
      "09:30 u =450",
      "09:31 n first",
      "09:32 z ! slip",
      "09:40 x",
      "10:00 b",
      "10:05 l 800",
      "10:10 r 200",
    ],
    ...["10:20 p 280", "10:21 i norad 10", "10:22 t 36"],
  ]),
];

/** Strokes that open a view log nothing; the others read a line. */
const keys = STROKES.map(({ key }) => key).filter((key) => key.length === 1);

const SENTENCE = /^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]+\.$/u;

function expectSound(before: CaseFile, after: CaseFile): void {
  const added = after.entries.slice(before.entries.length);
  expect(added.length).toBeGreaterThan(0);
  expect(after.entries.slice(0, before.entries.length)).toEqual(before.entries);
  for (const { entry, logged: written } of standing(after.entries).written) {
    for (const one of [entry, written]) {
      const parsed = entrySchema.safeParse(one);
      expect(parsed.success ? "" : faultOf(parsed.error)).toBe("");
    }
  }
  for (const entry of added) {
    const { subject, says } = entryWords(entry, after.protocol);
    expect(`${subject} ${says}`).toMatch(/^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]*$/u);
  }
  expect(readRun(after, now.ms).course.record.written.length).toBe(after.entries.length);
}

test("10,000 lines over all strokes, in an empty case, in a run and after one", () => {
  let written = 0;
  fc.assert(
    fc.property(fc.constantFrom(...cases), fc.constantFrom(...keys), anyText, (file, key, text) => {
      const outcome = logged(file, `${key}${text}`, now);
      if (outcome.ok) {
        written += 1;
        expectSound(file, outcome.value);
      } else {
        expect(outcome.fault).toMatch(SENTENCE);
      }
    }),
    { numRuns: 10_000 },
  );
  // The lines are not all nonsense: a good part of them mean something.
  expect(written).toBeGreaterThan(500);
});

test("lines that begin with anything at all", () => {
  fc.assert(
    fc.property(fc.constantFrom(...cases), anyText, (file, text) => {
      const outcome = logged(file, text, now);
      if (!outcome.ok) expect(outcome.fault).toMatch(SENTENCE);
    }),
    { numRuns: 1000 },
  );
});

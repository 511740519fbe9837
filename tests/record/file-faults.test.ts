/** A file that is not a sound case of ours gets one sentence that says what is wrong and where. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CaseFile } from "../../src/record/case.ts";
import { checkCase, readCase } from "../../src/record/reading-a-file.ts";
import { upcast } from "../../src/record/upcast.ts";
import { sampleOf } from "../helpers/every-kind.ts";
import { typed } from "../helpers/typed-case.ts";

const sound = typed(["08:00 h 28000", "08:10 u 100", "08:20 u =300", "08:30 d 300 a"]);

const faultIn = (json: unknown): string => {
  const read = checkCase(json);
  return read.ok ? "" : read.fault;
};

/** The sound case with a last entry that corrects another. */
const corrected = (...entries: { kind: "amend" | "void" | "reminder-done"; [field: string]: unknown }[]) => ({
  ...sound,
  entries: [
    ...sound.entries,
    ...entries.map(({ kind, ...fields }, i) =>
      sampleOf(kind, { changes: undefined, reason: undefined, ...fields }, 6 + i),
    ),
  ],
});

const amend = (target: string, changes: object) => ({ kind: "amend", target, changes }) as const;

test("a sound case is taken", () => {
  expect(readCase(JSON.stringify(sound))).toEqual({ ok: true, value: sound });
});

describe("text that is no case", () => {
  test.each([
    ["", "the file is empty."],
    ["  \n", "the file is empty."],
    ["cut {", "the file is not JSON, or was cut short."],
    [JSON.stringify(sound).slice(0, -20), "the file is not JSON, or was cut short."],
    ["[]", 'the file is not a pumpside case (its "format" is not "pumpside-case").'],
    ["null", 'the file is not a pumpside case (its "format" is not "pumpside-case").'],
    ["7", 'the file is not a pumpside case (its "format" is not "pumpside-case").'],
    [
      JSON.stringify(sound.protocol),
      'the file is not a pumpside case (its "format" is not "pumpside-case").',
    ],
  ])("%#: %.30s", (text, sentence) => {
    expect(readCase(text)).toEqual({ ok: false, fault: sentence });
  });

  test("cut short anywhere is said to be", () => {
    const text = JSON.stringify(sound, null, 2);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: text.length - 1 }), (length) => {
        const read = readCase(text.slice(0, length));
        expect(read).toEqual({ ok: false, fault: "the file is not JSON, or was cut short." });
      }),
    );
  });

  test("of any kind is refused in one sentence and never throws", () => {
    fc.assert(
      fc.property(fc.oneof(fc.json({ maxDepth: 3 }), fc.string({ unit: "binary" })), (text) => {
        const read = readCase(text);
        expect(read.ok ? "" : read.fault).toMatch(/^[^\n]+\.$/);
      }),
    );
  });
});

describe("what is wrong with an entry is said in plain words", () => {
  const withFirst = (kind: "opened" | "patient", fields: object) => ({
    ...sound,
    entries: [{ ...sampleOf(kind, {}, 1), ...fields }],
  });

  test.each<[string, unknown, string]>([
    [
      "a value above what can be",
      withFirst("patient", { haematocrit: 178 }),
      "at entries 1 haematocrit: it is above 90.",
    ],
    ["a value below", withFirst("patient", { ageYears: -1 }), "at entries 1 ageYears: it is below 0."],
    ["a value at an open end", withFirst("patient", { weight: 0 }), "at entries 1 weight: it is 0 or less."],
    [
      "a text for a number",
      withFirst("patient", { weight: "80" }),
      'at entries 1 weight: a value of the kind "number" belongs there.',
    ],
    [
      "a word that is none of a few",
      withFirst("patient", { sex: "x" }),
      "at entries 1 sex: it is not male or female or unknown.",
    ],
    [
      "a text that is too long",
      withFirst("opened", { operator: "x".repeat(13) }),
      "at entries 1 operator: it is longer than 12 characters.",
    ],
    [
      "a kind nobody knows",
      withFirst("opened", { kind: "guess" }),
      "at entries 1 kind: no such kind is known.",
    ],
  ])("%s", (_, json, sentence) => {
    expect(faultIn(json)).toBe(sentence);
  });
});

describe("a case that is not sound", () => {
  test.each<[string, unknown, string | RegExp]>([
    [
      "of a newer version",
      { ...sound, version: 2 },
      "the case was written by a newer version (file version 2, this program reads up to 1).",
    ],
    ["of a version that never was", { ...sound, version: 0 }, /^at version: .+\.$/],
    ["of a version in words", { ...sound, version: "1" }, /^at version: .+\.$/],
    ["without entries", { ...sound, entries: undefined }, /^at entries: .+\.$/],
    ["without a label", { ...sound, label: "" }, /^at label: .+\.$/],
    ["without a protocol", { ...sound, protocol: {} }, /^at protocol \w+: .+\.$/],
    ["with an id that no file name can hold", { ...sound, id: "../../etc" }, /^at id: .+\.$/],
    [
      "with a dose of words",
      { ...sound, entries: sound.entries.with(4, { ...sound.entries[4], ml: "300" } as never) },
      /^at entries 5 ml: .+\.$/,
    ],
    [
      "with an entry missing",
      { ...sound, entries: sound.entries.toSpliced(2, 1) },
      "entry 3 is out of order: it says it is number 4 (e4).",
    ],
    [
      "with two entries changed over",
      { ...sound, entries: [0, 2, 1, 3, 4].map((i) => sound.entries[i]) },
      "entry 2 is out of order: it says it is number 3 (e3).",
    ],
    [
      "with an entry twice",
      { ...sound, entries: [...sound.entries, sound.entries[4]] },
      "entry 6 is out of order: it says it is number 5 (e5).",
    ],
    [
      "that puts a later entry right",
      corrected(amend("e7", { ml: 5 })),
      "entry 6 points at e7, which is not an earlier entry.",
    ],
    [
      "that strikes itself out",
      corrected({ kind: "void", target: "e6", reason: "slip" }),
      "entry 6 points at e6, which is not an earlier entry.",
    ],
    [
      "that ends a reminder nobody wrote",
      corrected({ kind: "reminder-done", target: "e99" }),
      "entry 6 points at e99, which is not an earlier entry.",
    ],
    [
      "that makes a dose of words",
      corrected(amend("e5", { ml: "much" })),
      "entry 6 would make e5 an entry that is not valid.",
    ],
    [
      "that takes a dose's millilitres away",
      corrected(amend("e5", { ml: null })),
      "entry 6 would make e5 an entry that is not valid.",
    ],
    [
      "whose corrections are each right and wrong together",
      corrected(amend("e3", { ml: null, bagTotal: 100 }), amend("e3", { ml: 120 })),
      "entry 7 would make e3 an entry that is not valid.",
    ],
    [
      "that puts a strike right to strike a later entry",
      corrected({ kind: "void", target: "e2", reason: "slip" }, amend("e6", { target: "e8" })),
      "entry 6 points at e8, which is not an earlier entry.",
    ],
  ])("%s", (_, json, sentence) => {
    const fault = faultIn(json);
    if (typeof sentence === "string") expect(fault).toBe(sentence);
    else expect(fault).toMatch(sentence);
  });

  test("is told about without what a terminal would obey", () => {
    const fault = faultIn({ ...sound, entries: [sampleOf("amend", { changes: { "\x1b[2J": undefined } })] });
    expect(fault).toMatch(/^at entries 1 changes \[2J: .+\.$/);
  });
});

test("a bag read again after it was first put right is sound", () => {
  const file = corrected(amend("e3", { ml: null, bagTotal: 100 }), amend("e3", { bagTotal: 120 }));
  expect(faultIn(file)).toBe("");
});

test("a file of the present version is brought up to itself", () => {
  const file: CaseFile = sound;
  expect(upcast(file)).toBe(file);
});

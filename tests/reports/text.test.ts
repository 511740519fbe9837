// The report as text: fits the page, tells everything, and stays harmless for printers, terminals and other systems.

import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { INVENTED } from "../../src/commands/invented/index.ts";
import { CAUTIONS } from "../../src/format/cautions.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { TEXT_WIDTH, type TextOptions, textReport } from "../../src/reports/text.ts";
import { asciiOf } from "../../src/reports/text-ascii.ts";
import { foldedTo } from "../../src/reports/text-fold.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { given, typed } from "../helpers/typed-case.ts";
import { caseOf } from "../samples/samples.ts";
import { HOSTILE, hostileCase } from "./hostile.ts";
import { CHECKSUM, reported } from "./report-of.ts";

const textOf = (file: CaseFile, options: TextOptions = {}) => textReport(reported(file), options);
const tooWide = (text: string) => text.split(/\n\f?/).filter((line) => stringWidth(line) > TEXT_WIDTH);
const onOneLine = (text: string) => text.replace(/\s+/g, " ");

describe.each(INVENTED)("the text of $label", (script) => {
  const file = caseOf(script);
  const text = textOf(file);

  test("fits a page of 78 columns, in ASCII and in pages too", () => {
    for (const options of [{}, { ascii: true }, { pages: true }])
      expect(tooWide(textOf(file, options))).toEqual([]);
  });

  test("has what a reader looks for, under headings in this order", () => {
    const headings = [...text.matchAll(/^([A-Z][A-Z ,]+)\n-+$/gm)].map(([, heading]) => heading);
    expect(headings).toEqual([
      ...[
        "CASE",
        "SUMMARY",
        "PATIENT",
        "PEOPLE",
        "PLAN AND CIRCUIT",
        "TIMES",
        "ARREST SOLUTION",
        "FLUID BALANCE",
      ],
      ...["HEPARIN, PROTAMINE AND ACT", "OTHER DRUGS", "LOWEST AND HIGHEST ON BYPASS", "QUALITY INDICATORS"],
      ...["INCIDENTS", "COMPLETENESS OF THE RECORD", "CHECKLISTS", "READINGS AND GASES"],
      ...["HOW EACH FIGURE WAS MADE", "THE WHOLE LOG", "CAUTIONS AND CHECKSUM"],
    ]);
    for (const caution of CAUTIONS) expect(onOneLine(text)).toContain(caution);
    expect(text).toContain(`\n${CHECKSUM}\n`);
  });

  test("tells every entry by its number", () => {
    const log = text.slice(text.indexOf("THE WHOLE LOG"));
    const numbers = [...log.matchAll(/^ *\^?(\d+) +\d\d:\d\d:\d\d /gm)].map(([, n]) => Number(n));
    expect(numbers.toSorted((a, b) => a - b)).toEqual(file.entries.map(({ seq }) => seq));
  });

  test("is plain ASCII where that is asked for, without a question mark for a sign it uses itself", () => {
    const plain = textOf(file, { ascii: true });
    expect(plain).toMatch(/^[\n\x20-\x7e]*$/);
    expect(plain.split("?").length).toBe(text.split("?").length);
  });

  test("is parted into pages that say whose they are and where they stand", () => {
    const pages = textOf(file, { pages: true }).split("\f");
    expect(pages.length).toBeGreaterThan(5);
    pages.forEach((page, i) => {
      expect(page.split("\n").length).toBeLessThanOrEqual(61);
      expect(page.split("\n")[0]).toMatch(
        new RegExp(`^PERFUSION RECORD: .*page ${i + 1} of ${pages.length}$`),
      );
    });
    const lines = (one: string) => one.split("\n").filter((line) => /^ *\^?\d+ +\d\d:\d\d:\d\d /.test(line));
    expect(lines(pages.join("\n"))).toEqual(lines(text));
  });
});

test("a table that goes over the page repeats its heads, and no heading stands alone at the end of one", () => {
  const file = caseOf(INVENTED[0] as (typeof INVENTED)[number]);
  const pages = textOf(file, { pages: true }).split("\f");
  const logPages = pages.filter((page) => /^ *\d+ +\d\d:\d\d:\d\d +KM/m.test(page));
  expect(logPages.length).toBeGreaterThan(1);
  for (const page of logPages) expect(page).toMatch(/^No\. +Time +By +What +Said$/m);
  for (const page of pages) expect(page.trimEnd().split("\n").at(-1)).not.toMatch(/^-+( +-+)*$/);
});

test("a dose put right shows what it was, when it was put right, and by whom", () => {
  const text = textOf(
    typed(["09:00 b", "09:06 d 300", "09:20 z 350 ; read wrongly", "09:30 u 80", "09:31 z ! wrong bag"]),
  );
  expect(onOneLine(text)).toMatch(
    /\^4 09:20:00 AB put right #3: 350 mL; before that: 09:06:00 dose given · 300 mL/,
  );
  expect(onOneLine(text)).toMatch(/5 09:30:00 AB out STRUCK OUT: 80 mL · urine/);
  expect(onOneLine(text)).toMatch(/\^6 09:31:00 AB struck out #5 · wrong bag/);
});

test("what was written down late says when it was written", () => {
  expect(onOneLine(textOf(typed(["09:10 h 28000 @09:02"])))).toMatch(
    /09:02:00 AB heparin 28 000 IU; written 09:10:00/,
  );
});

test("a case with nothing in it says so, and names nought nowhere as a figure", () => {
  const text = textOf(typed([]));
  expect(text).toMatch(/bypass time +–/);
  expect(text).toContain("No dose recorded.");
  expect(text).toContain("not assessable");
  expect(text).not.toMatch(/^(fluid in|urine|net \(in - out\)|heparin in all) +0/m);
});

test("an open case is called preliminary, a closed one closed", () => {
  expect(textOf(typed(["09:00 b"]))).toContain("still open: this report is preliminary");
  expect(textOf(caseOf(INVENTED[0] as (typeof INVENTED)[number]))).toMatch(/^state +closed$/m);
});

test("a case over midnight tells the day beside the hours that are not of the first", () => {
  const file = typed(["23:50 b"]);
  const later = given(file, { kind: "span", what: "bypass", state: "off" }, "23:55");
  const moved = later.entries.map((entry) =>
    entry.seq === 3
      ? { ...entry, at: "2026-03-05T00:20:00.000+01:00", loggedAt: "2026-03-05T00:20:00.000+01:00" }
      : entry,
  );
  expect(textOf({ ...later, entries: moved })).toMatch(/bypass +23:50:00 +03-05 00:20:00 +30:00/);
});

test.each(HOSTILE)(
  "%s in every text fits the page and does nothing to a terminal or a printer",
  (...hostile) => {
    const file = hostileCase(hostile);
    for (const options of [{}, { ascii: true }, { pages: true }]) {
      const text = textOf(file, options);
      expect(tooWide(text)).toEqual([]);
      expect(text.replace(/[\n\f]/g, "")).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      if (options.ascii) expect(text).toMatch(/^[\n\x20-\x7e]*$/);
    }
  },
);

test("any run fits the page", () => {
  fc.assert(
    fc.property(anyRun(20), (run) => {
      expect(tooWide(textOf(play(run)))).toEqual([]);
    }),
    { numRuns: 30 },
  );
});

test("any text folds without losing a sign or passing the edge", () => {
  fc.assert(
    fc.property(
      fc.string({ unit: "grapheme", maxLength: 80 }),
      fc.integer({ min: 4, max: 30 }),
      (text, width) => {
        const lines = foldedTo(text, width);
        expect(lines.every((line) => stringWidth(line) <= width)).toBe(true);
        const bare = (one: string) => one.replace(/[\s\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, "");
        expect(bare(lines.join(""))).toBe(bare(text));
      },
    ),
  );
});

test("the signs of the trade are spelt in ASCII", () => {
  expect(asciiOf("2.4 L/min/m² × 1.98 m² − 3 °C · 100 µg – Müller, Łódź, Straße")).toBe(
    "2.4 L/min/m2 x 1.98 m2 - 3 C | 100 ug - Muller, Lodz, Strasse",
  );
  expect(asciiOf("漢字 🫀")).toBe("?? ?");
});

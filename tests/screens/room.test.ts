// Whatever was logged, whatever is being typed and however small the terminal: nothing is drawn past its edges,
// nothing is drawn over something else, and no number in the log is cut.

import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import type { Key } from "../../src/console/key.ts";
import { isUnsaved, type Model, openModel } from "../../src/console/model.ts";
import { openStart } from "../../src/console/start.ts";
import { entryWords } from "../../src/figures/entry-words.ts";
import type { Instant } from "../../src/format/instant.ts";
import { harmless } from "../../src/format/text.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { standing } from "../../src/record/standing.ts";
import { rowMark } from "../../src/screens/Log.tsx";
import { drawnRows, LEAST, type Size } from "../../src/screens/size.ts";
import { savedText } from "../../src/screens/TitleBar.tsx";
import { press } from "../helpers/console-keys.ts";
import { anyRun, play } from "../helpers/random-run.ts";
import { at, openedCase, typedOn } from "../helpers/typed-case.ts";
import { frameOf, HOME, runView, viewOf } from "./frame.ts";
import { SITUATIONS } from "./situations.ts";

const anySize = fc.record({
  columns: fc.integer({ min: 1, max: 200 }),
  rows: fc.integer({ min: 1, max: 60 }),
});
const enough: fc.Arbitrary<Size> = fc.record({
  columns: fc.integer({ min: LEAST.columns, max: 200 }),
  rows: fc.integer({ min: LEAST.rows, max: 60 }),
});

const named = [
  "enter",
  "escape",
  "tab",
  "backtab",
  "up",
  "down",
  "left",
  "pageup",
  "pagedown",
  "home",
] as const;
const anyKey: fc.Arbitrary<Key> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .constantFrom(..."bxdhpaftvuorlismgwencz/?q@;123450 ar")
      .map((char): Key => ({ name: "char", char })),
  },
  { weight: 2, arbitrary: fc.constantFrom(...named).map((name): Key => ({ name })) },
  {
    weight: 1,
    arbitrary: fc.string({ unit: "grapheme", maxLength: 90 }).map((text): Key => ({ name: "paste", text })),
  },
);

/** Letters of every width, words without an end, and numbers without an end. */
const anyText = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 200 }),
  fc.string({ unit: "binary", maxLength: 200 }),
  fc.integer({ min: 1, max: 300 }).map((length) => "7".repeat(length)),
  fc.integer({ min: 1, max: 300 }).map((length) => "w".repeat(length)),
);

/** A run, some keys on top of it, and a state of saving. */
const anySight = fc.record({
  run: anyRun(25),
  note: anyText,
  keys: fc.array(anyKey, { maxLength: 12 }),
  unsaved: fc.integer({ min: 0, max: 3 }),
  trouble: fc.option(fc.constantFrom("the disk is full", "the shared folder is not reachable")),
  laterMs: fc.integer({ min: 0, max: 12 * 3_600_000 }),
});
type Sight = typeof anySight extends fc.Arbitrary<infer S> ? S : never;

function seenIn({ run, note, keys, unsaved, trouble, laterMs }: Sight): { model: Model; now: Instant } {
  let now = at("08:00");
  const played = play(run, (_file, moment) => {
    now = moment;
  });
  const file = typedOn(played, note.trim() === "" ? [] : [`07:59 n${note.replaceAll(/\s+/g, " ")}`]);
  now = { ...now, ms: now.ms + laterMs };
  const opened = { ...openModel(file), saved: Math.max(0, file.entries.length - unsaved), trouble };
  return { model: press(opened, keys, now), now };
}

const frameIn = (sight: Sight, size: Size): string[] => {
  const { model, now } = seenIn(sight);
  return frameOf(runView(model, now), size);
};

/** The lines that are broken, in words; empty when all is well. */
function broken(frame: readonly string[], { columns, rows }: Size): string[] {
  const most = drawnRows({ columns, rows });
  return [
    ...(frame.length > most ? [`${frame.length} rows where ${most} fit`] : []),
    ...frame.filter((row) => stringWidth(row) > columns).map((row) => `wider than ${columns}: ${row}`),
  ];
}

describe("the edges of the terminal", () => {
  test("are kept by the run screen at every size", () => {
    fc.assert(
      fc.property(anySight, anySize, (sight, size) => {
        expect(broken(frameIn(sight, size), size)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test.each(Object.entries(SITUATIONS))("are kept at every size: %s", (_name, view) => {
    fc.assert(
      fc.property(anySize, (size) => {
        expect(broken(frameOf(view, size), size)).toEqual([]);
      }),
      { numRuns: 15 },
    );
  });

  test("are kept by the start screen, whatever a case or a folder is called", () => {
    const line = fc.record({
      path: fc.uuid(),
      id: anyText,
      label: anyText,
      opened: fc.constant("2026-03-04T07:00:00.000+01:00"),
      entries: fc.nat(100_000),
      state: fc.constantFrom("open" as const, "closed" as const),
      fault: fc.option(anyText, { nil: undefined }),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(line, { maxLength: 40, selector: ({ path }) => path }),
        anyText,
        anyText,
        anySize,
        (cases, notice, folder, size) => {
          const start = { ...openStart([]), cases, chosen: Math.max(0, cases.length - 2), notice };
          const view = { ...viewOf({ screen: "start", start, home: HOME }, at("07:00")), folder };
          expect(broken(frameOf(view, size), size)).toEqual([]);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe("the run screen, where there is room for it", () => {
  test("always says what is saved, in its first row", () => {
    fc.assert(
      fc.property(anySight, enough, (sight, size) => {
        const { model, now } = seenIn(sight);
        expect(frameOf(runView(model, now), size)[0]).toContain(savedText(model));
      }),
      { numRuns: 150 },
    );
  });

  test("never draws one part over another", () => {
    fc.assert(
      fc.property(anySight, enough, (sight, size) => {
        const { model, now } = seenIn(sight);
        if (model.mode.name === "help" || model.mode.name === "form") return;
        const frame = frameOf(runView(model, now), size);
        const places = [/^. BYPASS /, /^ in /, /^ heparin /, /^ arrest /, /^── /, /\? help$/].map((part) =>
          frame.findIndex((row) => part.test(row)),
        );
        expect(places).toEqual(places.toSorted((a, b) => a - b));
        expect(places).not.toContain(-1);
        expect(frame).toHaveLength(drawnRows(size));
      }),
      { numRuns: 150 },
    );
  });

  test("says loudly when something is not on the disk", () => {
    fc.assert(
      fc.property(anySight, enough, (sight, size) => {
        const { model, now } = seenIn(sight);
        const loud = isUnsaved(model) && model.trouble !== null;
        expect(frameOf(runView(model, now), size)[0]?.includes("NOT SAVED")).toBe(loud);
      }),
      { numRuns: 100 },
    );
  });
});

test("even one row of twenty columns says what is saved", () => {
  const small = fc.record({
    columns: fc.integer({ min: 20, max: LEAST.columns - 1 }),
    rows: fc.integer({ min: 1, max: 60 }),
  });
  fc.assert(
    fc.property(anySight, small, (sight, size) => {
      expect(frameIn(sight, size)[0]).toContain(savedText(seenIn(sight).model));
    }),
    { numRuns: 200 },
  );
});

test("a unit with more milestones than fit still sees its entry line, and how many are left out", () => {
  const marks = Array.from({ length: 90 }, (_, place) => ({
    letter: String.fromCodePoint(0x3b1 + place),
    id: `mark-${place}`,
    name: `milestone ${place}`,
    sort: "moment" as const,
  }));
  const model = press(openModel(openedCase({ ...adultProtocol, marks })), "m", at("08:00"));
  const frame = frameOf(runView(model, at("08:00")), LEAST);
  expect(frame).toHaveLength(drawnRows(LEAST));
  expect(frame[0]).toContain("saved 1");
  expect(frame.filter((row) => /milestone \d+ /.test(row)).length).toBeGreaterThan(5);
  expect(frame.join("\n")).toMatch(/… \d\d more/);
  expect(frame.at(-3)).toMatch(/^▸ m /);
});

describe("a row of the log", () => {
  const ROW = /^\d\d:\d\d:\d\d[ *▸]\s*#(\d+) (.*)$/;
  const digits = (text: string) => text.split(/\s+/).filter((word) => /\d/.test(word));

  test("holds whole numbers only, those of its entry", () => {
    let rows = 0;
    fc.assert(
      fc.property(anySight, enough, (sight, size) => {
        const { model, now } = seenIn(sight);
        const { written } = standing(model.file.entries);
        for (const shown of frameOf(runView({ ...model, panel: "log" }, now), size)) {
          const found = ROW.exec(shown);
          const fact = found && written[Number(found[1]) - 1];
          if (!fact) continue;
          rows += 1;
          const { subject, says } = entryWords(fact.entry, model.file.protocol);
          const whole = digits(`${subject} ${says} ${harmless(fact.entry.note ?? "")} ${rowMark(fact)}`);
          for (const number of digits(found?.[2] ?? "")) expect(whole).toContain(number);
        }
      }),
      { numRuns: 150 },
    );
    expect(rows).toBeGreaterThan(300);
  });

  test("says the amount of its entry at 80 columns", () => {
    fc.assert(
      fc.property(anyRun(25), (run) => {
        const file = play(run);
        const frame = frameOf(runView(openModel(file), at("23:00")), { columns: 80, rows: 60 });
        for (const { entry } of standing(file.entries).written.slice(-20)) {
          const row = frame.find((shown) => Number(ROW.exec(shown)?.[1]) === entry.seq);
          const [amount] = digits(entryWords(entry, file.protocol).says);
          if (amount !== undefined) expect(row).toContain(amount);
        }
      }),
      { numRuns: 100 },
    );
  });
});

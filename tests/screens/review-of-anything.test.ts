// The review of whatever a case may hold: it keeps to its edges, and a long case costs no more rows.

import fc from "fast-check";
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { type Key, keysOf } from "../../src/console/key.ts";
import type { CaseFile } from "../../src/record/case.ts";
import type { Draft } from "../../src/record/entry.ts";
import { drawnRows } from "../../src/screens/size.ts";
import { ESCAPE } from "../helpers/console-keys.ts";
import { given, typed } from "../helpers/typed-case.ts";
import { ENTER, frame, PAGE_UP, RUN, reviewed, TAB } from "./reviewed.ts";

describe("whatever a case holds", () => {
  const nasty = fc.oneof(
    fc.string({ unit: "binary", maxLength: 300 }),
    fc.constantFrom(
      "\u001b[2J\u001b[31mred",
      "a\u202eb\u200fc",
      "<b>&amp;</b>",
      "=SUM(A1)",
      "漢字".repeat(80),
      "👩‍👩‍👧‍👦".repeat(40),
      "w".repeat(900),
      "line\nbreak\ttab\u0007",
    ),
  );
  const drafts = nasty.chain((text) =>
    fc.constantFrom<Draft[]>(
      [{ kind: "note", text }],
      [{ kind: "incident", text }],
      [{ kind: "patient", allergies: text, number: text }],
      [{ kind: "plan", operation: text }],
      [{ kind: "drug", name: text.slice(0, 119) || "x", amount: 1, unit: "mg" }],
      [{ kind: "span", what: text.slice(0, 119) || "x", state: "on" }],
      [{ kind: "team", people: [{ role: text.slice(0, 119) || "x", who: text }] }],
    ),
  );
  const keys = fc.array(
    fc.constantFrom<Key>(
      ...[TAB, ENTER, PAGE_UP, ESCAPE],
      ...(["down", "left", "end"] as const).map((name): Key => ({ name })),
      ...keysOf("npfhz/.,d"),
    ),
    { maxLength: 25 },
  );
  const size = fc.record({
    columns: fc.integer({ min: 20, max: 200 }),
    rows: fc.integer({ min: 3, max: 60 }),
  });

  test("no row is wider than the terminal and no frame higher", () => {
    fc.assert(
      fc.property(nasty, fc.array(drafts, { maxLength: 12 }), keys, size, (label, lists, pressed, room) => {
        const file = lists.flat().reduce((before, draft) => given(before, draft, "08:30"), RUN);
        const rows = frame(reviewed({ ...file, label }, ...pressed), room);
        expect(rows.length).toBeLessThanOrEqual(drawnRows(room));
        for (const row of rows) {
          expect(stringWidth(row)).toBeLessThanOrEqual(room.columns);
          // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not come through.
          expect(row).not.toMatch(/[\u0000-\u001f\u007f\u200f\u202e]/);
        }
      }),
      { numRuns: 120 },
    );
  });

  test("10,000 entries draw as many rows as a hundred", () => {
    const base = typed(["08:15 b"]);
    const longer = (count: number): CaseFile => ({
      ...base,
      entries: [
        ...base.entries,
        ...Array.from({ length: count }, (_, i) => ({
          ...(base.entries[1] as CaseFile["entries"][number]),
          id: `e${i + 3}`,
          seq: i + 3,
          kind: "note" as const,
          text: `note ${i}`,
        })),
      ] as CaseFile["entries"],
    });
    for (const keys of [[TAB], [TAB, { name: "end" } as const], ["/note"], [TAB, TAB]]) {
      const [short, long] = [100, 10_000].map((count) => frame(reviewed(longer(count), ...keys)));
      expect(long).toHaveLength(short?.length ?? 0);
    }
    const end = frame(reviewed(longer(10_000), TAB, { name: "end" })).join("\n");
    expect(end).toContain("note 9999");
    expect(end).toContain("10002 in 10002 entries");
  });
});

/** What is half typed outlives the console, and whatever else lies in its place does no harm. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runApp } from "../../src/console/app.ts";
import { halfTypedOf, readHalfTyped } from "../../src/console/half-typed.ts";
import { type HalfTyped, type Model, openModel } from "../../src/console/model.ts";
import { ESCAPE, entriesOf, openLine, press } from "../helpers/console-keys.ts";
import { at, typed } from "../helpers/typed-case.ts";

const file = typed(["08:40 h 28000", "09:00 b"]);
const kept = (model: Model): unknown => JSON.parse(JSON.stringify(halfTypedOf(model)));

/** The console opened again with what was kept beside the case. */
function reopened(halfTyped: readonly HalfTyped[]): Model {
  const app = runApp({ file, clockEarlyBy: null, halfTyped }, null);
  if (app.screen !== "run") throw new Error("the run screen did not open");
  return app.model;
}

describe("a line half typed when the console ended", () => {
  const model = press(press(openModel(file), "d30", at("10:00")), [ESCAPE], at("10:01"));
  const both = press(model, "z@9:", at("10:02"));

  test("is kept with its time, whether it was aside or open, the open one last", () => {
    expect(readHalfTyped(kept(both))).toMatchObject([
      { name: "line", stroke: "d", text: "30", started: at("10:00") },
      { name: "put-right", target: "e3", text: "@9:", started: at("10:02") },
    ]);
  });

  test("comes back by Esc and writes its entry with the time of its first key", () => {
    const again = reopened(readHalfTyped(kept(both)));
    expect(again.notice).toBe("What was half typed has been kept: Esc brings it back.");
    const line = press(press(again, [ESCAPE, ESCAPE], at("11:00")), [ESCAPE], at("11:00"));
    expect(line.mode.name).toBe("put-right");
    const first = press(reopened(readHalfTyped(kept(model))), [ESCAPE], at("11:00"));
    expect(openLine(first).text).toBe("30");
    expect(entriesOf(press(first, "0\n", at("11:01"))).at(-1)).toMatchObject({
      ml: 300,
      at: "2026-03-04T10:00:00.000+01:00",
      loggedAt: "2026-03-04T11:01:00.000+01:00",
    });
  });

  test("with nothing in it is not kept", () => {
    expect(kept(press(openModel(file), "d", at("10:00")))).toEqual([]);
  });
});

describe("what lies in its place", () => {
  const line = { name: "line", stroke: "d", text: "30", cursor: 2, started: at("10:00"), fault: null };

  test.each<[string, unknown]>([
    ["nothing", undefined],
    ["no list", line],
    ["a list of something else", [1, "two"]],
    ["a line without its time", [{ ...line, started: undefined }]],
    ["a line from the year 10000", [{ ...line, started: { ms: 1e15, offset: 0 } }]],
  ])("%s is nothing half typed", (_, json) => {
    expect(readHalfTyped(json)).toEqual([]);
  });

  test.each<[string, object]>([
    ["a line of a stroke there is not", { ...line, stroke: "D" }],
    ["a line of a stroke that opens no line", { ...line, stroke: "?" }],
    ["a form of a stroke that opens none", { ...line, name: "form", field: "flow", texts: {}, page: 0 }],
    ["the putting right of an entry there is not", { ...line, name: "put-right", target: "e99" }],
  ])("%s is left out", (_, half) => {
    expect(reopened(readHalfTyped([half])).aside).toEqual([]);
  });

  test("of any kind never throws, whatever is pressed then", () => {
    const anyHalf = fc.record({
      name: fc.constantFrom("line", "put-right", "form"),
      stroke: fc.constantFrom("d", "z", "s", "k", "?", "constructor"),
      target: fc.constantFrom("e2", "e3", "e99"),
      field: fc.constantFrom("flow", "when", "nonsense"),
      texts: fc.dictionary(fc.constantFrom("flow", "when", "nonsense"), fc.string()),
      page: fc.nat(),
      text: fc.string(),
      cursor: fc.nat(),
      started: fc.record({ ms: fc.maxSafeNat(), offset: fc.integer({ min: -2000, max: 2000 }) }),
      fault: fc.option(fc.string()),
    });
    fc.assert(
      fc.property(fc.array(anyHalf, { maxLength: 3 }), (halves) => {
        const model = reopened(readHalfTyped(JSON.parse(JSON.stringify(halves))));
        const after = press(press(model, [ESCAPE], at("11:00")), "1\t2\n\n", at("11:00"));
        expect(entriesOf(after).slice(0, 3)).toEqual(file.entries);
      }),
    );
  });
});

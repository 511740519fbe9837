/** What a unit should know about its protocol, although it may be used as it is. */
import { expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { edited, warningsFor } from "./edited.ts";

test("a number without its source is pointed out and taken", () => {
  expect(warningsFor(edited(["coagulation", "actForBypass"], { value: 400 }))).toEqual([
    'coagulation · actForBypass: a number stands here without its source; add "source", if only to say "common practice, no source".',
  ]);
});

test("a source that is left empty is none", () => {
  expect(warningsFor(edited(["solutions", 0, "ratioSource"], ""))).toEqual([
    'solutions 1: a number stands here without its source; add "source", if only to say "common practice, no source".',
  ]);
});

test("readings that go stale before the next are due leave gaps", () => {
  expect(warningsFor(edited(["watch", "readingsHold", "value"], 5))).toEqual([
    "watch · readingsHold · value: values go stale after 5 min, before the next are due at 15 min; let them hold at least until the next are due.",
  ]);
});

test("a weight table that ends has no figure for the heavier", () => {
  const bands = [{ upTo: 60, value: 65, source: "x" }];
  expect(warningsFor(edited(["body", "bloodVolumeBands"], bands))).toEqual([
    "body · bloodVolumeBands 1 · upTo: the table ends at 60, and there is no figure above it; write null in its last step for all that lies above.",
  ]);
});

test("without the suckers among its marks, nothing can be said about suckers and protamine", () => {
  const marks = adultProtocol.marks.filter(({ id }) => id !== "suckers");
  expect(warningsFor(edited(["marks"], marks))).toEqual([
    'marks: there is no span "suckers", so nothing can be said about it; add it if your unit logs it.',
  ]);
});

test("blood without a haematocrit cannot be mixed", () => {
  expect(warningsFor(edited(["fluidsIn", 3, "haematocrit"], undefined))).toEqual([
    'fluidsIn 4: a blood product without a haematocrit cannot be mixed; add "haematocrit".',
  ]);
});

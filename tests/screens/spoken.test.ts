// The run for a screen reader: what is asked for first comes first, and nothing changes from one second to the next.

import { describe, expect, test } from "vitest";
import { openModel } from "../../src/console/model.ts";
import { spokenRun } from "../../src/screens/spoken.ts";
import { press } from "../helpers/console-keys.ts";
import { at, typed } from "../helpers/typed-case.ts";

const file = typed(["08:06 a512", "08:15 b", "08:26 x", "08:26:20 da", "08:29 d600"]);
const said = (clock: string) => spokenRun(openModel(file), at(clock));

describe("a run read aloud", () => {
  test("says the clocks, then what was entered last, then where it all belongs", () => {
    const [clocks, due, last, where] = said("08:40:30");
    expect(clocks).toMatch(
      /^bypass on, 25 min; clamp on, 14 min; last arrest dose 11 min ago, due in \d+ min; ACT 512 seconds, 34 min ago\.$/,
    );
    expect(due).toMatch(/^Due: .* since \d+ min/);
    expect(last).toMatch(/^Last entry: number \d+, 08:29:00, dose ended .*600/);
    expect(where).toMatch(/saved \d+\.$/);
  });

  test("is the same for a whole minute, so that it is not read anew each second", () => {
    const minute = Array.from({ length: 59 }, (_, second) =>
      said(`08:40:${String(second).padStart(2, "0")}`).join("\n"),
    );
    // Clocks that began at different seconds turn over at different seconds.
    expect(new Set(minute).size).toBeLessThanOrEqual(3);
  });

  test("begins with what is being typed and what it means", () => {
    const [typing] = spokenRun(press(openModel(file), "h5000", at("08:41")), at("08:41:01"));
    expect(typing).toMatch(/heparin.*5000/i);
  });
});

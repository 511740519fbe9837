/** Everything said or done in a run is logged by a few keys, which are counted: digits, Enter and all. */
import { describe, expect, test } from "vitest";
import { type Key, keysOf } from "../../src/console/key.ts";
import { openModel } from "../../src/console/model.ts";
import { DOWN, entriesOf, press } from "../helpers/console-keys.ts";
import { at } from "../helpers/typed-case.ts";
import { SAID_AND_DONE } from "./said-and-done.ts";

const keysIn = (text: string): Key[] => [...text].flatMap((sign) => (sign === "↓" ? [DOWN] : keysOf(sign)));

describe("what is said or done", () => {
  const now = { ...at("10:12"), ms: at("10:12").ms + 21 * 60_000 };

  test.each(SAID_AND_DONE)("$said", ({ when, keys, gives }) => {
    const moment = when.entries.some(({ loggedAt }) => loggedAt > "2026-03-04T10:12") ? now : at("10:12");
    const entries = entriesOf(press(openModel(when), keysIn(keys), moment));
    expect(entries).toHaveLength(when.entries.length + 1);
    expect(entries.at(-1)).toMatchObject(gives);
  });
});

describe("the keys", () => {
  const counts = SAID_AND_DONE.map(({ keys }) => keysIn(keys).length).toSorted((a, b) => a - b);

  test("are listed for at least sixty things", () => {
    expect(SAID_AND_DONE.length).toBeGreaterThanOrEqual(60);
  });

  test("are six or fewer for half of them", () => {
    expect(counts[Math.floor(counts.length / 2)]).toBeLessThanOrEqual(6);
  });

  test("are never more than twenty, free text and forms apart", () => {
    for (const { said, keys, long } of SAID_AND_DONE)
      if (!long) expect(keysIn(keys).length, said).toBeLessThanOrEqual(20);
  });
});

/** Keys of a unit's own, held against the stroke table. */
import { describe, expect, test } from "vitest";
import { ownKeyFaults } from "../../src/console/strokes/own-keys.ts";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { faultText } from "../../src/protocol/fault.ts";

const said = (keys: Record<string, string>) => ownKeyFaults({ ...adultProtocol, keys }).map(faultText);

describe("a unit's own keys", () => {
  test("that are free are taken", () => {
    expect(said({ note: "N", incident: "E" })).toEqual([]);
  });

  test("may change places with each other", () => {
    expect(said({ note: "e", incident: "n" })).toEqual([]);
  });

  test("that belong to another stroke are named with it", () => {
    expect(said({ note: "x" })).toEqual([
      'keys · note: "x" is the key of clamp on / off already; choose another key.',
    ]);
  });

  test("for a stroke that does not exist are named with those that do", () => {
    expect(said({ clmp: "X" })[0]).toMatch(
      /^keys · clmp: there is no stroke of that name; take one of bypass, clamp, .+\.$/,
    );
  });
});

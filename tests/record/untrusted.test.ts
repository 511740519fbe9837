// How deep a text from elsewhere is nested, told before it is parsed.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isTooDeep, parsedShallow } from "../../src/record/untrusted.ts";

/** The same, sign by sign. */
function deepest(json: string): number {
  let [depth, most, inText] = [0, 0, false];
  for (let at = 0; at < json.length; at++) {
    if (inText && json[at] === "\\") at += 1;
    else if (json[at] === '"') inText = !inText;
    else if (!inText && "[{".includes(json[at] as string)) depth += 1;
    else if (!inText && "]}".includes(json[at] as string)) depth -= 1;
    most = Math.max(most, depth);
  }
  return most;
}

test("sixty-four brackets within each other are allowed, and one more is not", () => {
  expect(isTooDeep("[".repeat(64) + "]".repeat(64))).toBe(false);
  expect(isTooDeep(`${'{"a":'.repeat(65)}1${"}".repeat(65)}`)).toBe(true);
});

test.each([String.raw`"\"[[[[\\"`, String.raw`"\\\\\"`, '"', '"\\'])(
  "brackets in the text %s are none",
  (text) => {
    expect(isTooDeep(text + "[".repeat(70))).toBe(deepest(text + "[".repeat(70)) > 64);
    expect(isTooDeep(`["${"[".repeat(70)}", ${text}`)).toBe(false);
  },
);

test("whatever the text, it is told as by reading sign by sign", () => {
  const signs = fc.array(
    fc.constantFrom('"', "\\", "[", "{", "]", "}", "a", '\\"', "[".repeat(30), "]".repeat(20)),
    { maxLength: 60 },
  );
  fc.assert(
    fc.property(signs, (parts) => {
      const json = parts.join("");
      expect(isTooDeep(json)).toBe(deepest(json) > 64);
    }),
    { numRuns: 2000 },
  );
});

describe.each([
  ["short", ""],
  ["long", " ".repeat(1_000_001)],
])("a %s text", (_, room) => {
  test("that is nested no deeper gives what it holds, and a deeper one nothing", () => {
    const nested = (depth: number) => `${room}${'{"a":['.repeat(depth / 2)}1${"]}".repeat(depth / 2)}`;
    expect(parsedShallow(nested(64))).toEqual(JSON.parse(nested(64)));
    expect(parsedShallow(nested(66))).toBeUndefined();
    expect(parsedShallow(`${room}"[[["`)).toBe("[[[");
    expect(() => parsedShallow(`${room}{`)).toThrow(SyntaxError);
  });
});

/** Whatever is in the file, it is answered and never thrown back. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { adultProtocol } from "../../src/protocol/adult.ts";
import { checkProtocolText } from "../../src/protocol/check.ts";
import { faultText } from "../../src/protocol/fault.ts";
import { edited } from "./edited.ts";

// biome-ignore lint/suspicious/noControlCharactersInRegex: what must never reach a terminal
const UNFIT = /[\u0000-\u001f\u007f-\u009f]/;

function isAnswered(text: string) {
  const checked = checkProtocolText(text);
  if (checked.ok) return;
  expect(checked.faults.length).toBeGreaterThan(0);
  for (const fault of checked.faults) {
    expect(fault.says).not.toBe("");
    expect(fault.suggestion).not.toBe("");
    expect(faultText(fault)).not.toMatch(UNFIT);
  }
}

const header = { format: "pumpside-protocol", version: 1 };

test("any text", () => {
  fc.assert(fc.property(fc.string({ unit: "binary" }), isAnswered));
});

test("any JSON", () => {
  fc.assert(fc.property(fc.json(), isAnswered));
});

test("any JSON that calls itself a protocol", () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (json) =>
      isAnswered(JSON.stringify({ ...json, ...header })),
    ),
  );
});

test("anything at all in the place of anything in a protocol", () => {
  const odd = fc.oneof(
    fc.jsonValue({ maxDepth: 3 }),
    fc.constantFrom<unknown>({ toString: 1 }, [{ toString: null }], { length: 3 }, -0, 1e308, "", "\u202e", [
      [],
    ]),
  );
  fc.assert(
    fc.property(placesIn(adultProtocol), odd, (path, value) => isAnswered(edited(path, value))),
    { numRuns: 400 },
  );
});

test("a protocol larger than any unit's is still answered", () => {
  isAnswered(JSON.stringify({ ...header, drugs: Array(200_000).fill(1) }));
  isAnswered(JSON.stringify({ ...header, gasFields: Array(150_000).fill("x") }));
  isAnswered(
    JSON.stringify({
      ...header,
      keys: Object.fromEntries(Array.from({ length: 60_000 }, (_, i) => [`k${i}`, 1])),
    }),
  );
});

/** A path to any value within. */
function placesIn(json: unknown): fc.Arbitrary<(string | number)[]> {
  const paths: (string | number)[][] = [];
  const walk = (value: unknown, path: (string | number)[]) => {
    if (path.length > 0) paths.push(path);
    if (typeof value !== "object" || value === null) return;
    for (const [key, inner] of Object.entries(value))
      walk(inner, [...path, Array.isArray(value) ? Number(key) : key]);
  };
  walk(json, []);
  return fc.constantFrom(...paths);
}

// Ids that follow from names, against the machine's own hash and values worked out elsewhere.

import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { nameUuid } from "../../src/reports/name-uuid.ts";
import { sha1 } from "../../src/reports/sha1.ts";

test("the hash is SHA-1, for any bytes and over the edges of its blocks", () => {
  const same = (bytes: readonly number[]) => {
    const own = createHash("sha1").update(Buffer.from(bytes)).digest("hex");
    expect(Buffer.from(sha1(bytes)).toString("hex")).toBe(own);
  };
  for (const length of [0, 1, 54, 55, 56, 57, 63, 64, 65, 119, 120, 128, 1000]) same(Array(length).fill(200));
  fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 255 }), { maxLength: 200 }), same));
});

// The space of domain names, and the example of RFC 9562, appendix A.4.
test("a name in a published space gives the published id", () => {
  expect(nameUuid("www.example.com", "6ba7b810-9dad-11d1-80b4-00c04fd430c8")).toBe(
    "2ed6657d-e927-568b-95e1-2665a8aea6a2",
  );
});

test("the same name gives the same id, another name another one", () => {
  expect(nameUuid("20260304-abcdef/e12")).toBe(nameUuid("20260304-abcdef/e12"));
  expect(nameUuid("20260304-abcdef/e12")).not.toBe(nameUuid("20260304-abcdef/e13"));
  expect(nameUuid("é漢")).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

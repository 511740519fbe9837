// Bytes that grow: in pieces that hold all of them, and stay as they were handed out.

import fc from "fast-check";
import { expect, test } from "vitest";
import { growingBytes } from "../../src/store/growing-bytes.ts";

const text = fc.tuple(fc.string({ unit: "grapheme" }), fc.nat(40)).map(([part, times]) => part.repeat(times));

test("hold every text added to them, in order, however it falls on the pieces", () => {
  fc.assert(
    fc.property(fc.array(text), (texts) => {
      const bytes = growingBytes(8);
      const handedOut = texts.map((one) => {
        bytes.add(one);
        return bytes.pieces();
      });
      handedOut.forEach((pieces, place) => {
        expect(Buffer.concat(pieces).toString()).toBe(texts.slice(0, place + 1).join(""));
      });
      bytes.clear();
      expect(Buffer.concat(bytes.pieces())).toHaveLength(0);
    }),
  );
});

test("are few pieces, however many they are", () => {
  const bytes = growingBytes();
  for (let line = 0; line < 30_000; line++) bytes.add("a line of a case as long as any".repeat(4));
  expect(bytes.pieces().length).toBeLessThan(12);
});

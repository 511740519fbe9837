// Fewer bytes, the same picture: a terminal that is sent both shows the same.

import xterm from "@xterm/headless";
import fc from "fast-check";
import { expect, test } from "vitest";
import { thinned } from "../../src/commands/thin.ts";

/** Every cell's sign and style after a terminal has been sent these pieces. */
async function shown(pieces: readonly string[]): Promise<unknown[]> {
  const terminal = new xterm.Terminal({ cols: 12, rows: 6, allowProposedApi: true });
  for (const piece of pieces) await new Promise<void>((done) => terminal.write(piece, done));
  const { active } = terminal.buffer;
  return Array.from({ length: 72 }, (_, place) => {
    const cell = active.getLine(Math.floor(place / 12))?.getCell(place % 12);
    if (!cell) return null;
    const style = [cell.isBold(), cell.isDim(), cell.isInverse(), cell.isStrikethrough()];
    return [cell.getChars(), cell.getFgColor(), cell.getBgColor(), ...style];
  });
}

const piece = fc.oneof(
  fc.constantFrom("a", "bc", "─", "\r\n", "\x1b[E", "\x1b[K", "\x1b[3G", "\x1b[2A", "\x1b[0m"),
  fc
    .constantFrom(1, 2, 22, 7, 27, 9, 29, 3, 23, 4, 24, 31, 39, 41, 49, 92, 101)
    .map((code) => `\x1b[${code}m`),
);

test("what is thinned out shows the same", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(piece, { maxLength: 40 }), async (pieces) => {
      const text = pieces.join("");
      expect(await shown([thinned(text)])).toEqual(await shown([text]));
    }),
    { numRuns: 300 },
  );
});

test("styles without a text and single steps go", () => {
  expect(thinned("\x1b[7m\x1b[1m\x1b[22m\x1b[27m\x1b[2m\x1b[22mx\x1b[E\x1b[E\x1b[E")).toBe(
    "\x1b[27m\x1b[22mx\x1b[3E",
  );
});

/** From what a terminal sends to keys. */
import { describe, expect, test } from "vitest";
import type { Key } from "../../src/console/key.ts";
import { type Held, NOTHING_HELD, patienceFor, readKeys, settleKeys } from "../../src/console/key-reader.ts";

const SETTLE = Symbol("time is up");

/** Keys in short: characters as they are, names in angle brackets, pastes in quotes. */
const short = (key: Key): string =>
  key.name === "char" ? key.char : key.name === "paste" ? JSON.stringify(key.text) : `<${key.name}>`;

function read(...pieces: readonly (string | typeof SETTLE)[]): { keys: string; held: Held } {
  let held = NOTHING_HELD;
  const keys: Key[] = [];
  for (const piece of pieces) {
    const step = piece === SETTLE ? settleKeys(held) : readKeys(held, piece);
    held = step.held;
    keys.push(...step.keys);
  }
  return { keys: keys.map(short).join(""), held };
}

const keysIn = (...pieces: readonly (string | typeof SETTLE)[]) => read(...pieces).keys;

describe("one read", () => {
  test.each([
    ["d300\r", "d300<enter>"],
    ["5\r", "5<enter>"],
    ["5\r\n", "5<enter>"],
    ["a\rb\nc", "a<enter>b<enter>c"],
    ["\r\r", "<enter><enter>"],
    ["\t\x7f\b\x03", "<tab><backspace><backspace><interrupt>"],
    ["\x00\x01\x1a\x9b", ""],
    ["é冷🫀", "é冷🫀"],
    ["\x1b[A\x1b[B\x1b[C\x1b[D", "<up><down><right><left>"],
    ["\x1bOA\x1bOB\x1bOC\x1bOD\x1bOH\x1bOF", "<up><down><right><left><home><end>"],
    ["\x1b[H\x1b[F\x1b[1~\x1b[4~\x1b[7~\x1b[8~", "<home><end><home><end><home><end>"],
    ["\x1b[3~\x1b[5~\x1b[6~\x1b[Z", "<delete><pageup><pagedown><backtab>"],
    ["\x1b[1;5A\x1b[1;2D\x1b[3;5~", "<up><left><delete>"],
    ["\x1bOM", "<enter>"],
    ["\x1bOP\x1b[15~\x1b[24~\x1b[1;5P\x1b[[A\x1b[[E", ""],
    ["\x1b[?1;2c\x1b[0n\x1b[>0;276;0c", ""],
    ["\x1b[200~two\r\nlines\x1b[201~", '"two\\r\\nlines"'],
    ["\x1b[200~\x1b[A\x1b[201~x", '"\\u001b[A"x'],
    ["d\x1b[201~3", "d3"],
  ])("%j", (bytes, keys) => {
    expect(keysIn(bytes)).toBe(keys);
  });
});

describe("torn in two", () => {
  test.each([
    ["an arrow", ["\x1b", "[A"], "<up>"],
    ["an arrow in three", ["\x1b", "[", "A"], "<up>"],
    ["a paste", ["\x1b[20", "0~pas", "ted\x1b[2", "01~x"], '"pasted"x'],
    ["a return from its line feed", ["5\r", "\n", "6"], "5<enter>6"],
    ["a return from its line feed, with time between", ["5\r", SETTLE, "\n6"], "5<enter>6"],
  ] as const)("%s", (_, pieces, keys) => {
    expect(keysIn(...pieces)).toBe(keys);
  });
});

describe("an Esc", () => {
  test("alone is a key once time is up, and only once", () => {
    expect(keysIn("\x1b")).toBe("");
    expect(keysIn("\x1b", SETTLE)).toBe("<escape>");
    expect(keysIn("\x1b", SETTLE, SETTLE, SETTLE)).toBe("<escape>");
  });

  test("with a character behind it is a key at once", () => {
    expect(keysIn("\x1bd")).toBe("<escape>d");
    expect(keysIn("\x1b", SETTLE, "d")).toBe("<escape>d");
  });

  test("twice is two keys", () => {
    expect(keysIn("\x1b\x1b", SETTLE)).toBe("<escape><escape>");
    expect(keysIn("\x1b", SETTLE, "\x1b", SETTLE)).toBe("<escape><escape>");
  });

  test("that was told and turns out to be the head of a key is taken back", () => {
    expect(keysIn("\x1b", SETTLE, "[A")).toBe("<escape><unescape><up>");
    expect(keysIn("\x1b", SETTLE, "[", "A")).toBe("<escape><unescape><up>");
    expect(keysIn("\x1b", SETTLE, "[200~x\x1b[201~")).toBe('<escape><unescape>"x"');
    expect(keysIn("\x1b", SETTLE, "[200~x", SETTLE)).toBe('<escape><unescape>"x"');
  });

  test("that was told leaves an O behind it an O", () => {
    expect(keysIn("\x1b", SETTLE, "O", SETTLE, "K")).toBe("<escape>OK");
  });
});

describe("when time is up", () => {
  test.each([
    ["nothing held gives nothing", ["5", SETTLE], "5"],
    ["half a sequence is dropped", ["\x1b[1;", SETTLE, "300"], "300"],
    ["a paste without an end gives what came of it", ["\x1b[200~pasted", SETTLE, "x"], '"pasted"x'],
    ["an Esc and an O were typed", ["\x1bO", SETTLE, "5"], "<escape>O5"],
  ] as const)("%s", (_, pieces, keys) => {
    expect(keysIn(...pieces)).toBe(keys);
  });

  test("nothing is held any more, but for an Esc that was told", () => {
    for (const bytes of ["", "5", "\x1b[", "\x1bO", "\x1b[200~x"])
      expect(read(bytes, SETTLE).held.text).toBe("");
    expect(read("\x1b", SETTLE).held).toMatchObject({ text: "\x1b", told: true });
  });
});

test("the host waits for what may still come, longest for a paste, and for nothing once that was told", () => {
  const patience = (...pieces: readonly (string | typeof SETTLE)[]) => patienceFor(read(...pieces).held);
  expect([patience(""), patience("d3"), patience("\x1b", SETTLE)]).toEqual([null, null, null]);
  const waits = [patience("\x1b"), patience("\x1b["), patience("\x1b[200~x")];
  expect(waits).toEqual(waits.toSorted((a, b) => Number(a) - Number(b)));
  expect(Math.min(...waits.map(Number))).toBeGreaterThan(0);
  expect(patience("\x1b", SETTLE, "[")).toBe(patience("\x1b["));
});

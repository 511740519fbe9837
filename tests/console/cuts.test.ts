/** The same bytes give the same entries however they are cut into reads, and whatever time passes between them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Held, NOTHING_HELD, readKeys, settleKeys } from "../../src/console/key-reader.ts";
import { type Model, openModel } from "../../src/console/model.ts";
import { entriesOf, press } from "../helpers/console-keys.ts";
import { at, openedCase } from "../helpers/typed-case.ts";

const LEFT = "\x1b[D";
const UP = "\x1b[A";
const HOME = "\x1b[1~";
const ESC = "\x1b";
const pasted = (text: string) => `\x1b[200~${text}\x1b[201~`;

/** A stretch of a run as a terminal sends it: slips mended with arrows, pastes, lines set aside and brought back. */
const BYTES = [
  "h28000\r",
  `b${ESC}${ESC}\r`,
  `x ${HOME}on\r`,
  `d30${LEFT}5\r`,
  `d${ESC}a512\r${ESC}\r\n`,
  `n${pasted("two\r\nlines")} 冷却🫀\r`,
  `n${pasted(`an arrow ${UP} inside`)}\r`,
  `z${UP}${UP}400\x1b[1;5D\x7f5\r`,
  "5\r",
  `u=45${HOME}\x1b[3~=\r`,
  `\x1b[15~\x1b[24~f3/4\x7f\x7f\x7f1/2\r`,
  `${UP}\x1b[6~\t\x1b[Zq${ESC}r100;${pasted("warm\n")}\r`,
  `/clam\r\r?${ESC}m?\rcr\x7f\x7f\x7fca\r`,
].join("");

const POINTS = [...BYTES];
const now = at("10:00");

type Console = { held: Held; model: Model };

const readInto = ({ held, model }: Console, piece: string): Console => {
  const read = readKeys(held, piece);
  return { held: read.held, model: press(model, read.keys, now) };
};

const settle = ({ held, model }: Console): Console => {
  const read = settleKeys(held);
  return { held: read.held, model: press(model, read.keys, now) };
};

const opened = (): Console => ({ held: NOTHING_HELD, model: openModel(openedCase()) });

/** The entries written when the bytes come in pieces; `pause` says after which of them time passes. */
function entriesWhen(cuts: readonly number[], pause: (place: number, held: Held) => boolean) {
  const places = [...cuts, POINTS.length].toSorted((a, b) => a - b);
  let console = opened();
  let from = 0;
  for (const [i, to] of places.entries()) {
    console = readInto(console, POINTS.slice(from, to).join(""));
    from = to;
    if (pause(i, console.held)) console = settle(console);
  }
  return JSON.stringify(entriesOf(settle(console).model));
}

const inOne = entriesWhen([], () => false);
const anyCuts = fc.uniqueArray(fc.integer({ min: 1, max: POINTS.length - 1 }), {
  maxLength: POINTS.length,
  // Without it the library cuts ten times at the most.
  size: "max",
});

test("in one read they are the entries that were meant", () => {
  const said = (JSON.parse(inOne) as { kind: string; typed: string }[]).slice(1);
  expect(said.map(({ kind, typed }) => [kind, typed])).toEqual([
    ["drug", "h28000"],
    ["span", "b"],
    ["span", "xon "],
    ["dose", "d350"],
    ["act", "a512"],
    ["dose", "d"],
    ["note", "ntwo lines 冷却🫀"],
    ["note", "nan arrow [A inside"],
    ["amend", "z#7 450"],
    ["volume", "u=45"],
    ["flow", "f1/2"],
    ["volume", "r100;warm"],
    ["span", "x"],
    ["span", "mca"],
  ]);
});

describe("cut anywhere", () => {
  test("they are the same entries", () => {
    fc.assert(
      fc.property(anyCuts, (cuts) => {
        expect(entriesWhen(cuts, () => false)).toBe(inOne);
      }),
      { numRuns: 2500 },
    );
  });

  test("and with time passing where nothing is half read but an Esc, they are too", () => {
    fc.assert(
      fc.property(anyCuts, fc.infiniteStream(fc.boolean()), (cuts, pauses) => {
        const pausing = (_: number, { text }: Held) => text.length < 2 && pauses.next().value === true;
        expect(entriesWhen(cuts, pausing)).toBe(inOne);
      }),
      { numRuns: 2500 },
    );
  });

  test("byte by byte they are the same, with time passing after every Esc", () => {
    const everywhere = POINTS.map((_, i) => i).slice(1);
    expect(entriesWhen(everywhere, (_, { text }) => text === ESC)).toBe(inOne);
  });
});

test("torn for longer than anybody waits, no entry that was written is lost", () => {
  fc.assert(
    fc.property(anyCuts, fc.infiniteStream(fc.boolean()), (cuts, pauses) => {
      let console = opened();
      let from = 0;
      for (const to of [...cuts, POINTS.length].toSorted((a, b) => a - b)) {
        const before = entriesOf(console.model);
        console = readInto(console, POINTS.slice(from, to).join(""));
        if (pauses.next().value === true) console = settle(console);
        expect(entriesOf(console.model).slice(0, before.length)).toEqual(before);
        from = to;
      }
    }),
    { numRuns: 300 },
  );
});

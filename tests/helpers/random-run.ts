/** Random runs: strokes typed one after the other with random pauses, among them corrections and slips. */
import fc from "fast-check";
import { logged } from "../../src/console/read-stroke.ts";
import type { Instant } from "../../src/format/instant.ts";
import type { CaseFile } from "../../src/record/case.ts";
import { at, openedCase } from "./typed-case.ts";

export type Typing = { readonly line: string; readonly pauseMs: number };

const fixedLines = [
  ...["b", "b off", "b on", "x", "x off", "x on"],
  ...["d", "d a", "d 300", "d 250 r", "d 400+", "d 900 l"],
  ...["h 28000", "h 50mg", "p 280", "a 479", "a 480"],
  ...["f full", "f 3/4", "f 1/2", "f 0", "f 4.5", "t 32", "t 37"],
  ...["v 500 c", "v 250 r", "u 50", "o 300 u", "o 100 s", "r 100", "l 800"],
  ...["m s", "m ca", "m cr", "m c", "m a", "m d"],
  ...["w 20", "w 10 gas", "w ok", "n a note", "e an incident"],
];

const back = fc.integer({ min: 0, max: 40 });
const amount = fc.integer({ min: 0, max: 1500 });
const number = fc.integer({ min: 1, max: 40 });

const anyLine = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...fixedLines) },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constantFrom(...fixedLines), back).map(([line, n]) => `${line} @-${n}`),
  },
  { weight: 1, arbitrary: amount.map((ml) => `u =${ml}`) },
  { weight: 1, arbitrary: fc.tuple(number, amount).map(([n, ml]) => `z #${n} ${ml}`) },
  { weight: 1, arbitrary: fc.tuple(number, back).map(([n, ago]) => `z #${n} @-${ago}`) },
  {
    weight: 1,
    arbitrary: fc.tuple(number, fc.constantFrom("! slip", "back")).map((it) => `z #${it.join(" ")}`),
  },
);

export const anyRun = (most: number): fc.Arbitrary<Typing[]> =>
  fc.array(fc.record({ line: anyLine, pauseMs: fc.integer({ min: 0, max: 15 * 60_000 }) }), {
    minLength: 1,
    maxLength: most,
    // Without it the library keeps its arrays to ten.
    size: "max",
  });

/** Types a run from 08:00 on; what is refused writes nothing. `seen` hears of the case after each line. */
export function play(
  run: readonly Typing[],
  seen: (file: CaseFile, now: Instant) => void = () => {},
): CaseFile {
  let file = openedCase();
  let now = at("08:00");
  for (const { line, pauseMs } of run) {
    now = { ...now, ms: now.ms + pauseMs };
    const after = logged(file, line, now);
    if (after.ok) file = after.value;
    seen(file, now);
  }
  return file;
}

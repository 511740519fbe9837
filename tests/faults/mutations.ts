// Damage of every kind to a text: for readers that have to say a sentence or give a value, whatever they are given.

/** A row of numbers from nought to below `most` that is the same for the same seed. */
export type Dice = (most: number) => number;

export function diceFrom(seed: number): Dice {
  let state = (seed ^ 0x9e3779b9) >>> 0;
  return (most) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % most;
  };
}

/** What may stand where something else should: extremes, other kinds, names that reach behind objects, controls. */
const PIECES = [
  "null",
  "true",
  "0",
  "-1",
  "1e999",
  "-0",
  "1e-320",
  "123456789012345678901234567890",
  '""',
  '"\\u0000\\u001b[2J\\u202e"',
  '"\\ud800"',
  "[]",
  "{}",
  "[[[[[[[[[[[[]]]]]]]]]]]]",
  '{"__proto__":{"x":1}}',
  '"2026-02-30T25:61:00.000+99:99"',
  '"275760-09-13T00:00:00.001Z"',
  '"e999999"',
  '"e1"',
  '"void"',
  '"amend"',
  '"closed"',
  "\u0000",
  "\u{1f480}",
  '"',
  "{",
  "}",
  ",",
  ":",
  "\\",
];

/** One of many ways to damage a text; the same for the same dice. */
export function damaged(text: string, dice: Dice): string {
  let now = text;
  for (let times = 1 + dice(3); times > 0; times--) now = damagedOnce(now, dice);
  return now;
}

function damagedOnce(text: string, dice: Dice): string {
  const at = dice(text.length + 1);
  const length = dice(40);
  const rest = text.slice(at + length);
  switch (dice(9)) {
    case 0:
      return text.slice(0, at);
    case 1:
      return text.slice(0, at) + rest;
    case 2:
      return text.slice(0, at) + text.slice(at, at + length) + text.slice(at);
    case 3:
      return text.slice(0, at) + String.fromCharCode(dice(65_536)) + text.slice(at + 1);
    case 4:
      return text.slice(0, at) + PIECES[dice(PIECES.length)] + text.slice(at);
    case 5:
      return swappedLines(text, dice);
    default:
      return otherValue(text, at, dice);
  }
}

/** Two lines change places, or one stands twice: an entry is a line. */
function swappedLines(text: string, dice: Dice): string {
  const lines = text.split("\n");
  const [one, other] = [dice(lines.length), dice(lines.length)];
  const kept = lines[one] as string;
  lines[one] = lines[other] as string;
  if (dice(2) === 0) lines[other] = kept;
  return lines.join("\n");
}

/** Puts another value in the place of the next one: the text mostly stays JSON. */
function otherValue(text: string, at: number, dice: Dice): string {
  VALUE.lastIndex = at;
  const found = VALUE.exec(text);
  if (found === null) return text.slice(0, at);
  return `${text.slice(0, found.index)}:${PIECES[dice(PIECES.length)]}${text.slice(VALUE.lastIndex)}`;
}

const VALUE = /:\s*("(?:[^"\\]|\\.)*"|[-\d.eE+]+|true|false|null)/g;

/** Dots in character cells, finer than a character: two by four in braille, one by three in plain ASCII. */
import { createContext } from "react";

export type Look = "braille" | "ascii";

/** What the terminal can show; braille unless the root says otherwise. */
export const LookContext = createContext<Look>("braille");

type Cell = {
  readonly across: number;
  readonly down: number;
  /** The character for the dots of a cell, its bits in rows from the top left. */
  readonly glyph: (bits: number) => string;
};

const BRAILLE_BITS = [0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80];

const braille = (bits: number): string =>
  bits === 0
    ? " "
    : String.fromCodePoint(
        BRAILLE_BITS.reduce((sum, bit, place) => (bits & (1 << place) ? sum + bit : sum), 0x2800),
      );

/** By the dots at the top, in the middle and at the foot of a cell. */
const ASCII = [" ", "'", "-", "|", ".", ":", "|", "|"] as const;

const CELLS: Readonly<Record<Look, Cell>> = {
  braille: { across: 2, down: 4, glyph: braille },
  ascii: { across: 1, down: 3, glyph: (bits) => ASCII[bits] ?? "|" },
};

export type Dots = {
  readonly across: number;
  readonly down: number;
  /** Sets a dot, counted from the top left; one outside is not set. */
  readonly set: (x: number, y: number) => void;
  /** The rows of cells; a cell without dots is a space. */
  readonly rows: () => string[][];
};

/** A grid of dots over `width` × `height` cells. */
export function dotGrid(width: number, height: number, look: Look): Dots {
  const cell = CELLS[look];
  const [across, down] = [width * cell.across, height * cell.down];
  const bits = Array.from({ length: height }, () => new Uint8Array(width));
  return {
    across,
    down,
    set: (x, y) => {
      const row = bits[Math.floor(y / cell.down)];
      if (row === undefined || x < 0 || x >= across) return;
      const place = (y % cell.down) * cell.across + (x % cell.across);
      const column = Math.floor(x / cell.across);
      row[column] = (row[column] ?? 0) | (1 << place);
    },
    rows: () => bits.map((row) => [...row].map(cell.glyph)),
  };
}

/** The dots of a straight line between two dots, both ends among them. */
export function straight(
  dots: Dots,
  [x0, y0]: readonly [number, number],
  [x1, y1]: readonly [number, number],
): void {
  const steps = Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0), 1);
  for (let step = 0; step <= steps; step++)
    dots.set(x0 + Math.round(((x1 - x0) * step) / steps), y0 + Math.round(((y1 - y0) * step) / steps));
}

/** Lines of a fixed width: folded at the spaces, and where a word is longer than the line, within it. */
import stringWidth from "string-width";
import { harmless } from "../format/text.ts";

/** The columns that a text takes in a terminal. */
export const widthOf = (text: string): number => stringWidth(text);

const segmenter = new Intl.Segmenter("en", { granularity: "grapheme" });

/** The text in lines no wider than `width`; one empty line for an empty text. */
export function foldedTo(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const piece of harmless(text)
    .split(" ")
    .flatMap((word) => piecesOf(word, width))) {
    const longer = line === "" ? piece : `${line} ${piece}`;
    if (widthOf(longer) <= width) line = longer;
    else {
      lines.push(line);
      line = piece;
    }
  }
  return [...lines, line];
}

/** A word cut into pieces that fit a line. */
function piecesOf(word: string, width: number): string[] {
  if (widthOf(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = "";
  for (const { segment } of segmenter.segment(word)) {
    if (piece !== "" && widthOf(piece + segment) > width) {
      pieces.push(piece);
      piece = "";
    }
    piece += segment;
  }
  return [...pieces, piece];
}

/** Filled with spaces to the width, on the right or, for numbers, on the left. */
export function filledTo(text: string, width: number, isNumber = false): string {
  const spaces = " ".repeat(Math.max(0, width - widthOf(text)));
  return isNumber ? spaces + text : text + spaces;
}

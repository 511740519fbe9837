/** Lines that are read out or printed, folded so that they fit: between phrases where that goes, else between words. */

/** What fits beside a margin in 80 columns. */
const LINE_WIDTH = 76;

/** A phrase ends at a comma, a semicolon, a dot between phrases or a plus; so a number stays beside its unit. */
const BETWEEN_PHRASES = /(?<=[,;·+]) /;

/** `label` in its column, and the text behind it; lines that follow leave the column empty. */
export function folded(label: string, text: string, column: number): string[] {
  const room = LINE_WIDTH - column;
  const pieces = text
    .split(BETWEEN_PHRASES)
    .flatMap((phrase) => (phrase.length > room ? phrase.split(" ") : [phrase]));
  const lines: string[] = [];
  for (const piece of pieces) {
    const line = lines.at(-1);
    if (line === undefined || line.length + 1 + piece.length > room) lines.push(piece);
    else lines[lines.length - 1] = `${line} ${piece}`;
  }
  return lines.map((line, i) => `${(i === 0 ? label : "").padEnd(column)}${line}`.trimEnd());
}

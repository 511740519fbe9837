/** Lines that are read out or printed, folded at the spaces so that they fit. */

/** What fits beside a margin in 80 columns. */
export const LINE_WIDTH = 76;

/** `label` in its column, and the text behind it; lines that follow leave the column empty. */
export function folded(label: string, text: string, column: number): string[] {
  const room = LINE_WIDTH - column;
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((one, i) => `${(i === 0 ? label : "").padEnd(column)}${one}`.trimEnd());
}

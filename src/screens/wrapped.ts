/** Text broken into rows between words. */
import stringWidth from "string-width";

/** At least one row; a single word wider than the room stands in a row of its own. */
export function wrapped(text: string, columns: number): string[] {
  const rows: string[] = [];
  let row = "";
  for (const word of text.split(" ")) {
    const longer = row === "" ? word : `${row} ${word}`;
    if (row !== "" && stringWidth(longer) > columns) {
      rows.push(row);
      row = word;
    } else {
      row = longer;
    }
  }
  return [...rows, row];
}

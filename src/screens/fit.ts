/** Text cut to a width so that no number is ever cut: what does not fit goes by whole words. */
import stringWidth from "string-width";

/** The text if it fits, else as many of its words as fit and `…`. Only a single word wider than all is cut inside. */
export function cutTo(text: string, columns: number): string {
  if (stringWidth(text) <= columns) return text;
  const words = text.split(" ");
  while (words.length > 1 && stringWidth(`${words.join(" ")} …`) > columns) words.pop();
  const kept = `${words.join(" ")} …`;
  return stringWidth(kept) <= columns ? kept : cutInside(words[0] ?? "", columns);
}

/** The last of a text, for what is being typed: its end is what the person looks at. */
export function endOf(text: string, columns: number): string {
  if (stringWidth(text) <= columns) return text;
  const points = [...text];
  while (points.length > 0 && stringWidth(`…${points.join("")}`) > columns) points.shift();
  return columns < 1 ? "" : `…${points.join("")}`;
}

const NUMBER_AT_END = /[\d.,:+-]*\d[\d.,:]*$/;

/** A word wider than the room. Where the cut falls in a number, the whole number goes. */
function cutInside(word: string, columns: number): string {
  if (columns < 1) return "";
  let kept = "";
  for (const point of word) {
    if (stringWidth(kept + point) > columns - 1) break;
    kept += point;
  }
  return `${kept.replace(NUMBER_AT_END, "")}…`;
}

/** Padded with spaces to a width, or cut to it. */
export function column(text: string, columns: number): string {
  const fitted = cutTo(text, columns);
  return fitted + " ".repeat(Math.max(0, columns - stringWidth(fitted)));
}

/** Of a row's items those that fit whole, in order; `width` is that of one item with the gap before it. */
export function fitting<T>(items: readonly T[], columns: number, width: (item: T) => number): T[] {
  let room = columns;
  return items.filter((item) => {
    const fits = width(item) <= room;
    if (fits) room -= width(item);
    return fits;
  });
}

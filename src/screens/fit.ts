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

/** A word without spaces and wider than the room; a number is never that long. */
function cutInside(word: string, columns: number): string {
  let kept = "";
  for (const point of word) {
    if (stringWidth(kept + point) > columns - 1) break;
    kept += point;
  }
  return `${kept}…`.slice(0, Math.max(0, columns));
}

/** Padded with spaces to a width, or cut to it. */
export function column(text: string, columns: number): string {
  const fitted = cutTo(text, columns);
  return fitted + " ".repeat(Math.max(0, columns - stringWidth(fitted)));
}

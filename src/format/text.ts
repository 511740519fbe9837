/** Text from people and files made harmless for a terminal and for one line. */

/** One line without control characters, terminal escapes or direction marks; white space folded. */
export const harmless = (text: string): string =>
  (PLAIN.test(text) ? text : withoutUnsafe(text)).replace(/\s+/g, " ").trim();

/** Text that has none of them, which is told at once: nearly all text is such. */
const PLAIN = /^[\x20-\x7e]*$/;

// Controls (Cc), the invisible marks that turn the direction of writing or hide in it (Cf), line separators, halves.
const withoutUnsafe = (text: string): string => text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, " ");

/** `a, b and c` */
export function listed(words: readonly string[], last = "and"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
}

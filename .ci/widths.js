// How wide a text is, for the bundle: text of ordinary signs is counted, and only other text loads string-width, whose
// tables of emoji take longer to read than everything else before the first paint.

// Signs of one column each that join nothing: Latin, Greek and Cyrillic, dashes, arrows, mathematics, lines, blocks, braille.
const ORDINARY =
  /^[\x20-\x7e\xa1-\xac\xae-\u02ff\u0370-\u0377\u0384-\u03ff\u0400-\u0482\u048a-\u052f\u2010-\u2027\u2030-\u205e\u2080-\u208e\u2190-\u21ff\u2200-\u22ff\u2500-\u25fc\u2800-\u28ff]*$/;

/**
 * Whether every sign of a text takes one column and joins no other.
 * @param {string} text
 */
export const isOrdinary = (text) => ORDINARY.test(text);

// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const STYLE = /\x1b\[[0-9;]*m/g;

/**
 * The columns that a text takes; `string-width` decides about whatever is not ordinary.
 * @param {string} text
 * @param {object} [options] those of string-width
 * @returns {number}
 */
export default function stringWidth(text, options) {
  if (options === undefined && typeof text === "string") {
    const bare = text.includes("\x1b") ? text.replace(STYLE, "") : text;
    if (isOrdinary(bare)) return bare.length;
  }
  return require("string-width").default(text, options);
}

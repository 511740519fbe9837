/** Text in plain ASCII, sign for sign of the same width, for terminals that can show nothing else. */

/** The signs of the screens; a sign takes as many columns as what stands for it. */
const SIGNS: Readonly<Record<string, string>> = {
  ...each("─━‐‑‒–—−⁻", "-"),
  ...each("│┃╎", "|"),
  ...each("┌┐└┘├┤┬┴┼╭╮╯╰", "+"),
  ...each("█▀▄▌▐■▪", "#"),
  ...each("▶▸→»›＞", ">"),
  ...each("←«‹", "<"),
  ...each("↑▴▲", "^"),
  ...each("↓▾▼", "v"),
  ...each("·•✓●", "*"),
  ...each("…┈", "~"),
  ...each("“”„", '"'),
  ...each("‘’′°", "'"),
  ...each("×", "x"),
  ...each("µμ", "u"),
  ...each("æœ", "e"),
  ...each("ÆŒ", "E"),
  ...{ ø: "o", Ø: "O", ł: "l", Ł: "L", ß: "s", đ: "d", Đ: "D", π: "p", "√": "v" },
};

function each(signs: string, plain: string): Record<string, string> {
  return Object.fromEntries([...signs].map((sign) => [sign, plain]));
}

/** A cluster that is no sign of the table: letters lose their accents, digits their height, the rest is `?`. */
function nearest(cluster: string, width: Width): string {
  const plain = cluster.normalize("NFKD").replace(/[^\x20-\x7e]/g, "");
  const columns = width(cluster);
  return plain.length === columns ? plain : "?".repeat(columns);
}

/** How many columns a text takes. */
type Width = (text: string) => number;

const OUTSIDE = /[^\0-\x7f]+/g;

/** The text in ASCII, as wide as it was; terminal sequences stay. */
export const inAscii = (text: string, width: Width): string =>
  text.replace(OUTSIDE, (run) => {
    const signs = [...run].map((sign) => SIGNS[sign]);
    return signs.includes(undefined) ? clustered(run, width) : signs.join("");
  });

/** Signs that may join each other, such as a letter and its accent, are taken together. */
const clustered = (run: string, width: Width): string =>
  [...new Intl.Segmenter().segment(run)]
    .map(({ segment }) => SIGNS[segment] ?? nearest(segment, width))
    .join("");

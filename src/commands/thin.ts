/** The same drawing in fewer bytes, for slow lines: no style that ends before it styles anything, and steps down at once. */

// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const STYLES = /(?:\x1b\[\d+m){2,}/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: terminals begin their sequences with Esc.
const STEPS_DOWN = /(?:\x1b\[E){2,}/g;

/** What a style belongs to: the later of two of one group holds. Bold and dim add to each other, and 22 ends both. */
function groupOf(code: number): string {
  if (code === 22) return "weight";
  if (code === 7 || code === 27) return "reverse";
  if (code === 9 || code === 29) return "struck";
  if ((code >= 30 && code <= 37) || code === 39 || (code >= 90 && code <= 97)) return "colour";
  if ((code >= 40 && code <= 47) || code === 49 || (code >= 100 && code <= 107)) return "background";
  return code === 1 || code === 2 ? "weight added" : `other ${code}`;
}

/** Of styles that follow each other without a text between them, those that hold in the end. */
function heldOf(run: string): string {
  const codes = (run.match(/\d+/g) ?? []).map(Number);
  const kept = codes.filter((code, place) => {
    const later = codes.slice(place + 1);
    const group = groupOf(code);
    if (group === "weight added") return !later.includes(22) && !later.includes(code);
    return !later.some((other) => groupOf(other) === group);
  });
  return kept.map((code) => `\x1b[${code}m`).join("");
}

export const thinned = (text: string): string =>
  text.replace(STYLES, heldOf).replace(STEPS_DOWN, (run) => `\x1b[${run.length / 3}E`);

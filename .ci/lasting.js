// Keeps what was made of texts from one frame to the next, in which nearly all of them are the same.

/** So many texts are on a large screen several times over. */
const MOST = 500;

/**
 * The same function of a text, which is asked only for texts that are new.
 * @template T
 * @param {(text: string) => T} make
 * @returns {(text: string) => T}
 */
export function lasting(make) {
  /** @type {Map<string, T>} */
  const made = new Map();
  return (text) => {
    const before = made.get(text);
    if (before !== undefined) return before;
    if (made.size >= MOST) made.clear();
    const now = make(text);
    made.set(text, now);
    return now;
  };
}

/** The known word that a mistyped one most likely stands for. */

/** Letters to add, drop or change to make one word of the other, capitals counting as small ones. */
export function editDistance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, i) => i);
  for (const [i, letter] of [...one.toLowerCase()].entries()) {
    const next = [i + 1];
    for (const [j, against] of [...other.toLowerCase()].entries()) {
      const change = (row[j] ?? 0) + (letter === against ? 0 : 1);
      next.push(Math.min(change, (row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1));
    }
    row = next;
  }
  return row.at(-1) ?? one.length;
}

/** The nearest of the known words, or undefined where none is near enough to be meant. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (word.length > 60) return undefined;
  const most = Math.max(1, Math.floor(word.length / 3));
  const byDistance = known
    .map((candidate) => ({ candidate, distance: editDistance(word, candidate) }))
    .toSorted((a, b) => a.distance - b.distance);
  const best = byDistance[0];
  return best && best.distance <= most ? best.candidate : undefined;
}

/** `write "interval"` where one is near, else the list to choose from. */
export function instead(word: string, known: readonly string[], verb = "write"): string {
  const near = nearest(word, known);
  if (near !== undefined) return `${verb} "${near}"`;
  return known.length === 0 ? "take it out" : `choose from ${known.join(", ")}`;
}

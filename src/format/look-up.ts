/** Tables of words that people type, asked only for their own words: not for `constructor`, which every object knows. */

/** The table's value for a word, `undefined` when the table does not hold it. */
export const lookUp = <T>(table: Readonly<Record<string, T>>, word: string): T | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;

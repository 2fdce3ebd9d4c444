/** What a table of ours holds for a word that somebody typed: "constructor" is a word like any other, and stands in none. */
export const ownEntry = <Value>(table: Readonly<Record<string, Value>>, word: string): Value | undefined =>
  Object.hasOwn(table, word) ? table[word] : undefined;

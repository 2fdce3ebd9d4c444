/** A place in a pattern where any one letter may stand. */
const ANY = Symbol("any letter");
type Letter = string | typeof ANY;

/** A text with Excel's wildcards, taken apart once: what stands between its `*`. */
export interface Wildcards {
  /** Whether a text as a whole is what is meant. */
  matches(text: string): boolean;
  /** Where in a text what is meant begins first, from 0; -1 if nowhere. */
  indexIn(text: string): number;
}

/**
 * `?` for a letter, `*` for any number of them, `~` before one that is meant itself; capitals are the same as small letters. Each part
 * between two `*` is looked for where it comes first, so that no pattern takes longer than its length times the text's: a
 * regular expression goes back and forth over all `*`, and some twenty in a row never end.
 */
export function wildcards(pattern: string): Wildcards {
  const parts = partsOf(pattern);
  const [first = [], last = []] = [parts[0], parts.at(-1)];
  return {
    matches(text) {
      const letters = lettersOf(text);
      if (parts.length === 1) return letters.length === first.length && standsAt(letters, first, 0);
      const end = letters.length - last.length;
      if (end < first.length || !standsAt(letters, first, 0) || !standsAt(letters, last, end)) return false;
      return endOf(letters, parts.slice(1, -1), first.length, end) >= 0;
    },
    indexIn(text) {
      const letters = lettersOf(text);
      const start = find(letters, first, 0, letters.length);
      if (start < 0 || endOf(letters, parts.slice(1), start + first.length, letters.length) < 0) return -1;
      return letters.slice(0, start).join("").length;
    },
  };
}

function partsOf(pattern: string): Letter[][] {
  const letters = lettersOf(pattern);
  const parts: Letter[][] = [[]];
  for (let at = 0; at < letters.length; at++) {
    const letter = letters[at]!;
    if (letter === "*") parts.push([]);
    else parts.at(-1)!.push(letter === "?" ? ANY : letter === "~" && at + 1 < letters.length ? letters[++at]! : letter);
  }
  return parts;
}

/** Letter by letter, since a word may become longer in small letters. */
const lettersOf = (text: string): string[] =>
  Array.from(text, (letter) => (letter.toLowerCase().length === letter.length ? letter.toLowerCase() : letter));

const standsAt = (letters: readonly string[], part: readonly Letter[], at: number): boolean =>
  part.every((letter, index) => (letter === ANY ? at + index < letters.length : letters[at + index] === letter));

function find(letters: readonly string[], part: readonly Letter[], from: number, to: number): number {
  for (let at = from; at + part.length <= to; at++) if (standsAt(letters, part, at)) return at;
  return -1;
}

/** Where the last of some parts ends, each behind the one before it; -1 where they do not all find room. */
function endOf(letters: readonly string[], parts: readonly (readonly Letter[])[], from: number, to: number): number {
  let end = from;
  for (const part of parts) {
    const at = find(letters, part, end, to);
    if (at < 0) return -1;
    end = at + part.length;
  }
  return end;
}

/** The engine's own functions (MATCH, VLOOKUP, the database functions) ask by this name; fast-properties-loader.cjs puts the question in. */
Object.assign(globalThis, { [Symbol.for("wildcards of formulas")]: (text: string, pattern: string) => wildcards(pattern).matches(text) });

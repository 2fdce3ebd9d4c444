import { BatchFileRefused } from "./refused";

/** A batch weighs 3 to 8 kB; a longer text is none. */
export const longestText = 100_000;
const deepest = 8;
const forbiddenKeys = new Set(["__proto__", "constructor", "prototype"]);

/**
 * Looks at the text before anything is built from it: its length, how deep it nests, keys that stand twice in one
 * object (a reader would silently take the last) and keys that reach into the language itself. That it is JSON at all
 * is for the parser to say.
 */
export function inspectJson(text: string): void {
  if (text.length > longestText)
    throw new BatchFileRefused(`This file has ${Math.ceil(text.length / 1000)} kB; a batch file has at most ${longestText / 1000} kB.`);
  const keys: (Set<string> | undefined)[] = [];
  // A string followed by a colon is a key; everything else between the brackets does not matter here.
  for (const [token, key] of text.matchAll(/("(?:[^"\\]|\\.)*")\s*:|"(?:[^"\\]|\\.)*"|[[\]{}]/gs)) {
    if (key !== undefined) noteKey(keys, keyName(key));
    else if (token === "{" || token === "[") {
      keys.push(token === "{" ? new Set() : undefined);
      if (keys.length > deepest) throw new BatchFileRefused(`This file nests deeper than ${deepest} levels; a batch file does not.`);
    } else if (token === "}" || token === "]") keys.pop();
  }
}

function noteKey(keys: (Set<string> | undefined)[], name: string): void {
  if (forbiddenKeys.has(name)) throw new BatchFileRefused(`This file holds an entry named “${name}”, which no batch file has.`);
  const known = keys.at(-1);
  if (known?.has(name)) throw new BatchFileRefused(`The entry “${name}” stands twice in the same place: which of the two is meant?`);
  known?.add(name);
}

/** With its escapes resolved, so that "\u005f_proto__" does not slip by. */
function keyName(quoted: string): string {
  try {
    return String(JSON.parse(quoted));
  } catch {
    throw new BatchFileRefused("This file is damaged: a name in it cannot be read.");
  }
}

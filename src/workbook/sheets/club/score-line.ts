/** What begins the line of text in which a taster's scores come back. */
export const scoreLineOpening = "Gylebook scores";

/** One taster's scores, from a sheet or a line of text; blank where a beer has not all its marks. */
export interface Scores {
  /** The sheet or line that they came in, for words about them. */
  readonly from: string;
  readonly tastingId: string;
  readonly taster: string;
  readonly sums: readonly { readonly code: number; readonly sum: number | "" }[];
}

/**
 * The scores in what members wrote: a line for each, whatever stands around it in their letters.
 *
 * @returns scores, and lines that begin like one and are none
 */
export function readScoreLines(text: string): { readonly scores: readonly Scores[]; readonly unreadable: readonly string[] } {
  const scores: Scores[] = [];
  const unreadable: string[] = [];
  for (const line of text.split(/\r?\n/)) {
    const from = line.indexOf(scoreLineOpening);
    if (from < 0) continue;
    const [, tastingId = "", taster = "", ...beers] = line
      .slice(from)
      .trim()
      .replace(/"$/, "")
      .split("|")
      .map((part) => part.trim());
    const sums = beers
      .map((beer) => /^(\d{3}):(\d{0,3})$/.exec(beer))
      .map((match) => match && { code: Number(match[1]), sum: match[2] ? Number(match[2]) : ("" as const) });
    const known = sums.filter((one) => one !== null);
    if (tastingId === "" || taster === "" || known.length === 0 || known.length < sums.length) unreadable.push(line.trim());
    else scores.push({ from: `the line of ${taster}`, tastingId, taster, sums: known });
  }
  return { scores, unreadable };
}

import { chiSquaredAbove } from "../math/chi-squared";

/**
 * Whether several tasters put several beers into the same order: Friedman's test (J. Am. Stat. Assoc. 32, 1937, 675), as
 * ISO 8587:2006 has it for ranking, with its correction for ties.
 */
export interface Agreement {
  /** Of each beer: 1 for every taster who put it first, 2 for second; beers with one score share the places that they take. */
  readonly rankSums: readonly number[];
  readonly statistic: number;
  /** Probability of a statistic as large if all orders were equally likely, 0 to 1. */
  readonly byChance: number;
  /** Whether every order was counted; else chi-squared stands in, as in the standard. */
  readonly isCounted: boolean;
  /** Coefficient of concordance: 0 none, 1 all the same (M. G. Kendall and B. Babington Smith, Ann. Math. Stat. 10, 1939, 275). */
  readonly concordance: number;
  /** Even tasters who agree in everything would do so by chance in more than one case of twenty. */
  readonly tooFew: boolean;
}

/** Of so many beers, orders are counted for so many tasters at most: a tenth or two of a second. Beyond six beers never. */
const mostCounted: Readonly<Record<number, number>> = { 2: 100, 3: 60, 4: 20, 5: 8, 6: 3 };

/** The risk that goes with the least difference, and with the verdict. */
export const usualRisk = 0.05;

/** @param scores a row for each taster, a column for each beer, more is better; at least two beers */
export function agreement(scores: readonly (readonly number[])[]): Agreement {
  const [tasters, beers] = [scores.length, scores[0]?.length ?? 0];
  const ranks = scores.map(ranksOf);
  const rankSums = summed(ranks, beers);
  // Beers are apart by the squares of their rank sums from the mean; at most as far as the ranks themselves are.
  const apart = (sums: readonly number[]): number => sums.reduce((sum, one) => sum + (one - (tasters * (beers + 1)) / 2) ** 2, 0);
  const spread = ranks.flat().reduce((sum, rank) => sum + (rank - (beers + 1) / 2) ** 2, 0);
  const statistic = spread === 0 ? 0 : ((beers - 1) * apart(rankSums)) / spread;
  const isCounted = tasters <= (mostCounted[beers] ?? 0);
  return {
    rankSums,
    statistic,
    byChance: isCounted ? counted(ranks, (sums) => apart(sums) >= apart(rankSums) - 1e-9) : chiSquaredAbove(statistic, beers - 1),
    isCounted,
    concordance: statistic / (tasters * (beers - 1)),
    tooFew: orders(beers) ** (tasters - 1) < 1 / usualRisk,
  };
}

/**
 * By how much two rank sums must differ before the beers do (ISO 8587:2006, 1.96 standard deviations of such a difference,
 * for a risk of 5 % each).
 */
export const leastDifference = (tasters: number, beers: number): number => 1.96 * Math.sqrt((tasters * beers * (beers + 1)) / 6);

const ranksOf = (row: readonly number[]): number[] =>
  row.map((score) => row.filter((other) => other > score).length + (row.filter((other) => other === score).length + 1) / 2);

const summed = (ranks: readonly (readonly number[])[], beers: number): number[] =>
  Array.from({ length: beers }, (_, beer) => ranks.reduce((sum, row) => sum + (row[beer] ?? 0), 0));

const orders = (beers: number): number => (beers < 2 ? 1 : beers * orders(beers - 1));

/**
 * The share of all orders, every taster's own ranks shuffled, that come out like this. Which beer is which does not matter, so
 * the first taster's order may stay, and sums are kept sorted: few different ones are left.
 */
function counted(ranks: readonly (readonly number[])[], isLike: (sums: readonly number[]) => boolean): number {
  const [first = []] = ranks;
  // Sums are halves at the finest: twice each is a digit of its own.
  const base = 2 * ranks.length * first.length + 1;
  let states = new Map([[0, { sums: [...first], share: 1 }]]);
  for (const row of ranks.slice(1)) {
    const shuffled = permutations(row);
    const next: typeof states = new Map();
    for (const { sums, share } of states.values())
      for (const order of shuffled) {
        const added = sums.map((sum, beer) => sum + (order[beer] ?? 0)).sort((one, other) => one - other);
        const key = added.reduce((digits, sum) => digits * base + 2 * sum, 0);
        const known = next.get(key);
        if (known) known.share += share / shuffled.length;
        else next.set(key, { sums: added, share: share / shuffled.length });
      }
    states = next;
  }
  return Math.min(
    1,
    [...states.values()].reduce((sum, { sums, share }) => (isLike(sums) ? sum + share : sum), 0),
  );
}

const permutations = (row: readonly number[]): number[][] =>
  row.length < 2
    ? [[...row]]
    : row.flatMap((first, at) => permutations(row.filter((_, index) => index !== at)).map((rest) => [first, ...rest]));

import { agreement, leastDifference, usualRisk } from "../../core/taste/agreement";
import { BrewingError } from "../../core/brewing-error";
import { describeFunction } from "../describe";
import { verdict } from "./forced-choice";

export const tasteAgree = describeFunction({
  id: "TASTE.AGREE",
  summary: "Whether tasters agree which beers are better, from a table of their scores, and which beers differ.",
  parameters: {
    scores: {
      kind: "block",
      quantity: "number",
      doc: "The scores, a row for each taster and a column for each beer, more is better; blank or 0 where somebody has not tasted. Who has not scored every beer is left out.",
      limits: { above: 0, atMost: 1000 },
      typical: 4,
      blank: "missing",
    },
  },
  result: {
    kind: "grid",
    doc: "Seven labelled rows. verdict: at 5 %. rank sum, beer by beer: 1 for each taster who put it first; beers with the same score share their places; the smallest sum is the winner. statistic: Friedman's. by chance: how likely so large a one is if nobody could tell, counted where there are few, else about, by chi-squared. agreement: 0 none, 1 all alike. tasters: who scored every beer. least difference: beers whose rank sums are further apart differ; only where the verdict shows a difference.",
    columns: ["what", "value"],
  },
  equation:
    "statistic = (k − 1) Σ (rank sum − n (k + 1) / 2)² / Σ (rank − (k + 1) / 2)²; by chance from all orders, each taster's ranks shuffled, or chi-squared with k − 1; agreement = statistic / (n (k − 1)); least difference = 1.96 √(n k (k + 1) / 6)",
  sources: [
    { cite: "ISO 8587:2006, Sensory analysis, ranking", where: "Friedman's test with ties, and the least difference (layout from memory)" },
    { cite: "M. Friedman, J. Am. Stat. Assoc. 32, 1937, 675", where: "the test" },
    { cite: "M. G. Kendall and B. Babington Smith, Ann. Math. Stat. 10, 1939, 275", where: "the coefficient of agreement" },
  ],
  examples: [
    {
      arguments: [
        [
          [5, 4, 2],
          [4, 3, 1],
          [5, 3, 2],
        ],
      ],
      value: [
        ["verdict", "difference shown", "", ""],
        ["rank sum", 3, 6, 9],
        ["statistic", 6, "", ""],
        ["by chance, %", 2.7778, "counted", ""],
        ["agreement", 1, "", ""],
        ["tasters", 3, "", ""],
        ["least difference", 4.801, "", ""],
      ],
      tolerance: 0.001,
      from: "worked by hand: all three agree, 6 of 6 × 6 × 6 orders; 1.96 √(3 × 3 × 4 / 6)",
    },
    {
      arguments: [
        [
          [4, 4],
          [5, 3],
        ],
      ],
      value: [
        ["verdict", "too few tasters", ""],
        ["rank sum", 2.5, 3.5],
        ["statistic", 1, ""],
        ["by chance, %", 100, "counted"],
        ["agreement", 0.5, ""],
        ["tasters", 2, ""],
        ["least difference", "", ""],
      ],
      tolerance: 1e-9,
      from: "worked by hand: (1 × (0.25 + 0.25)) / (0 + 0.5); either order of the second taster is as far apart",
    },
  ],
  cautions: [
    "Taste blind, each in an order of their own, and write the scores before anybody speaks: who hears the others agrees with them.",
    "No difference shown is not the same as alike.",
  ],
  compute: ({ scores }) => {
    const complete = scores.filter((row): row is number[] => row.every((score) => score !== null));
    const beers = scores[0]?.length ?? 0;
    if (beers < 2) throw new BrewingError("impossible", "scores is 1 column wide; it must hold two beers or more");
    if (complete.length === 0) return [[""]];
    const { rankSums, statistic, byChance, isCounted, concordance, tooFew } = agreement(complete);
    const isShown = byChance <= usualRisk;
    const row = (what: string, ...cells: (string | number)[]): (string | number)[] =>
      Array.from({ length: beers + 1 }, (_, at) => [what, ...cells][at] ?? "");
    return [
      row("verdict", verdict(tooFew, isShown)),
      row("rank sum", ...rankSums),
      row("statistic", statistic),
      row("by chance, %", 100 * byChance, isCounted ? "counted" : "about"),
      row("agreement", concordance),
      row("tasters", complete.length),
      row("least difference", isShown ? leastDifference(complete.length, beers) : ""),
    ];
  },
});

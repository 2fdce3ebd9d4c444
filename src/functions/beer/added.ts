import { gravityWithAdditions } from "../../core/beer/added";
import { alcoholByVolume } from "../../core/beer/alcohol";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { mass, percent, units, volume } from "../vocabulary";
import { balling, finalGravity, originalGravity } from "./gravities";
import { sugarTable } from "../wort/sugar-tables";

const additions = {
  kind: "table",
  doc: "What came in after the yeast, a row for each; a column with names may stand before it. Sugar: 100 for sugar, 80 for honey, 5 to 15 for fruit.",
  columns: {
    mass: mass("Its mass.", { typical: 0.5 }),
    sugar: percent("Sugar in it, % of its mass.", { limits: { above: 1, atMost: 100 }, typical: 100, hint: percentHint }),
  },
  layouts: [
    [null, "mass", "sugar"],
    ["mass", "sugar"],
  ],
} as const;

export const beerAdded = describeFunction({
  id: "BEER.ADDED",
  summary: "Alcohol of a beer that got sugar, honey or fruit while it fermented.",
  parameters: {
    originalGravity,
    volume: volume("Wort in the fermenter when the yeast went in."),
    additions,
    finalGravity,
    units,
  },
  result: {
    kind: "grid",
    doc: "Two rows: the gravity as if all had been there from the beginning, and alcohol in % by volume.",
    columns: ["what", "value"],
  },
  equation: "OE = Σ mass × extract / Σ mass, the wort's mass being volume × OG × 0.9982; alcohol as GYLE.BEER.ABV",
  sources: [
    { cite: "mass balance", where: "what comes in adds up; that the rest of fruit is water is our assumption" },
    sugarTable,
    balling,
  ],
  examples: [
    {
      arguments: [1.04003, 20, [[0.4719, 100]], 1.01],
      value: [
        ["original gravity in all", 1.04837],
        ["alcohol", 5.08],
      ],
      tolerance: 0.02,
      from: "worked by hand from NBS Table 114: 10 °Bx and 0.4719 kg of sugar are 12 °Bx (WORT.ENRICH); RE = 0.1808 × 12 + 0.8192 × 2.56 = 4.27, (12 − 4.27) / 1.9385 × 1.01 / 0.791",
    },
    {
      arguments: [1.05, 5, [["cherries", 5, 12]], 1.008, "us"],
      value: [
        ["original gravity in all", 1.0498],
        ["alcohol", 5.55],
      ],
      tolerance: 0.03,
      from: "worked by hand: fruit of 12 % hardly changes a wort of 12.39 °P; 43.83 lb of wort and 5 lb of fruit, 12.35 °P",
    },
  ],
  cautions: [
    "Sugar or fruit in beer starts fermentation again: bottle only when two readings a day apart agree, or bottles burst.",
    "Fruit varies, and part of its sugar stays in the pulp: take the answer for ±0.3 % alcohol.",
    "Fruit brings wild yeast: it may ferment on where beer yeast stops.",
  ],
  compute: ({ originalGravity: original, volume: litres, additions: rows, finalGravity: final }) => {
    const whole = gravityWithAdditions(
      original,
      litres,
      rows.map(({ mass: massKg, sugar }) => ({ massKg, sugarPercent: sugar })),
    );
    return [
      ["original gravity in all", whole],
      ["alcohol", alcoholByVolume(whole, final)],
    ];
  },
});

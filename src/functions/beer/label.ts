import { labelOf } from "../../core/beer/label";
import { describeFunction } from "../describe";
import { cutaia, finalGravity, originalGravity } from "./gravities";
import { primed } from "./primed";

export const beerLabel = describeFunction({
  id: "BEER.LABEL",
  summary: "What a label would say of 100 mL of the beer: energy, carbohydrate, alcohol.",
  parameters: { originalGravity, finalGravity, primed },
  result: {
    kind: "grid",
    doc: "Four rows, in 100 mL: energy in kJ and in kcal, carbohydrate in g, alcohol in % by volume.",
    columns: ["what", "value"],
  },
  equation:
    "kJ = 29 alcohol + 17 (carbohydrate + protein), kcal = 7 alcohol + 4 (carbohydrate + protein), in g; alcohol = ABW × FG, carbohydrate as GYLE.BEER.CARBS, protein = 0.07 RE × FG; each volume of gas from priming adds 0.207 g of alcohol",
  sources: [
    {
      cite: "Regulation (EU) No 1169/2011",
      where: "annex XIV: 29 kJ or 7 kcal for a gram of alcohol, 17 or 4 for carbohydrate and protein",
    },
    cutaia,
    { cite: "usual figures, from memory", where: "protein 7 % of the real extract, ash 0.1 %" },
  ],
  examples: [
    {
      arguments: [1.04728, 1.00932],
      value: [
        ["energy (kJ)", 183],
        ["energy (kcal)", 43],
        ["carbohydrate (g)", 3.6],
        ["alcohol (% vol)", 5],
      ],
      tolerance: 3,
      from: "US food tables, from memory: ordinary beer with 3.9 g of alcohol has 43 kcal and 3.6 g of carbohydrate in 100 g; 29 × 3.9 + 17 × 4.0 = 181 kJ, 183 in 100 mL; the gravities are those of 3.9 % by mass with 4.17 °P of real extract",
    },
    {
      arguments: [1.05, 1.01, 1.6],
      value: [
        ["energy (kJ)", 206.2],
        ["energy (kcal)", 49.3],
        ["carbohydrate (g)", 4.08],
        ["alcohol (% vol)", 5.73],
      ],
      tolerance: 0.2,
      from: "worked by hand: ABW 4.16 × 1.01 + 0.331 = 4.53 g, carbohydrate 4.08 (13.47 in 330 mL), protein 0.315; 29 × 4.534 + 17 × 4.395",
    },
  ],
  cautions: [
    "An estimate for your own bottles. Beer that is sold needs what the law of the place asks for, and an analysis; never for diets or diabetes.",
  ],
  compute: ({ originalGravity: original, finalGravity: final, primed: volumes }) => {
    const { kj, kcal, carbohydrateG, abvPercent } = labelOf(original, final, volumes);
    return [
      ["energy (kJ)", kj],
      ["energy (kcal)", kcal],
      ["carbohydrate (g)", carbohydrateG],
      ["alcohol (% vol)", abvPercent],
    ];
  },
});

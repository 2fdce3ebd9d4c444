import { mashCorrection } from "../../core/mash/acidity";
import { describeFunction } from "../describe";
import { number, units } from "../vocabulary";
import { acidCautions, acidityEquation, aciditySources, corrector, grist, mashOf, scale, strength } from "./mash";

export const mashCorrect = describeFunction({
  id: "MASH.CORRECT",
  summary: "Acid, or base, that brings a mash to the pH you want.",
  parameters: {
    ...grist,
    target: number("number", {
      doc: "pH wanted at room temperature, 5.2 to 5.6 for most beers.",
      limits: { atLeast: 4.8, atMost: 6 },
      typical: 5.4,
    }),
    acid: corrector,
    strength,
    scale,
    units,
  },
  result: {
    kind: "number",
    quantity: "number",
    doc: "mL of acid, g of a base, also with us units. The pH it rests on is good to about 0.1.",
  },
  equation: acidityEquation,
  sources: aciditySources,
  examples: [
    {
      arguments: [[[5, 5.74]], 15, 0, 0, 0, 5.4],
      value: 6.668,
      tolerance: 0.01,
      from: "worked by hand: 5 × 45 × 0.34 = 76.5 meq, and 0.06 of free acid, / (0.972 × 11.81)",
    },
    {
      arguments: [
        [
          [4, "base", 2],
          [1, 4.65, 500],
        ],
        15,
        0,
        0,
        0,
        5.6,
        "baking soda",
      ],
      value: 1.253,
      tolerance: 0.005,
      from: "worked by hand: 1 × 40 × 0.95 − 4 × 45 × 0.14 = 12.8 meq; at pH 5.6 a mole takes 0.858: 14.9 mmol × 84.0 mg",
    },
    {
      arguments: [
        [
          [10, "base", 2],
          [1.5, 4.65, 500],
        ],
        4,
        0,
        50,
        0,
        5.6,
        "slaked lime",
        null,
        "SRM",
        "us",
      ],
      value: 0.417,
      tolerance: 0.002,
      from: "worked by hand: 25.86 − 28.58 + 15.14 L × 2.495 / 3.5 = 8.07 meq, less 0.04; / (2 − 2 / 3.5) = 5.62 mmol × 74.1 mg",
    },
  ],
  cautions: [
    ...acidCautions,
    "More acid than 1 mL of lactic acid for each kg of malt can be tasted: thin hard water down first (GYLE.WATER.TARGET).",
  ],
  compute: ({ target, acid, strength: percent, ...rest }) => mashCorrection(mashOf(rest), target, acid, percent),
});

import { phOfMash } from "../../core/mash/acidity";
import { describeFunction } from "../describe";
import { number, optional, units } from "../vocabulary";
import { acidCautions, acidityEquation, aciditySources, aciditySpread, corrector, grist, mashOf, scale, strength } from "./mash";

export const mashAcidity = describeFunction({
  id: "MASH.ACIDITY",
  summary: "The pH to expect in a mash, from malts, water and acid.",
  parameters: {
    ...grist,
    acid: corrector,
    strength,
    acidAmount: optional(
      number("number", {
        doc: "How much of it goes into the mash: mL of acid, g of a base, also with us units.",
        limits: { atLeast: 0, atMost: 10000 },
        blank: "zero",
        typical: 2,
      }),
      0,
    ),
    scale,
    units,
  },
  result: {
    kind: "number",
    quantity: "number",
    doc: "pH of the mash at room temperature, mostly to within 0.1; hot mash reads about 0.3 lower.",
  },
  equation: acidityEquation,
  sources: aciditySources,
  modelSpread: aciditySpread,
  examples: [
    {
      arguments: [[[5, 5.74]], 15, 0, 0, 0],
      value: 5.74,
      tolerance: 0.005,
      from: "worked by hand: malt alone in distilled water keeps its own pH",
    },
    {
      arguments: [
        [
          [4, "base", 2],
          [0.4, 4.95, 60],
        ],
        15,
        0,
        70,
        0,
      ],
      value: 5.586,
      tolerance: 0.002,
      from: "worked by hand: 4 × 45 × (pH − 5.74) + 0.4 × 50 × (pH − 4.95) + 15 × 3.493 / 3.5 = 0",
    },
    {
      arguments: [[[10, "", "mash", 4, 5.8]], 4, 0, 0, 0, "lactic", 88, 2, "EBC", "us"],
      value: 5.686,
      tolerance: 0.002,
      from: "worked by hand: 4.536 kg × 45 × (5.8 − pH) = 2 × 11.81 × 0.985 meq",
    },
  ],
  cautions: acidCautions,
  compute: ({ acid, acidAmount, strength: percent, ...rest }) => phOfMash(mashOf(rest), acid, acidAmount, percent),
});

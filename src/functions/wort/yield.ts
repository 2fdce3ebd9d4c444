import { pureSugarPointsLPerKg, yieldPercentFromPoints } from "../../core/wort/extract-potential";
import { describeFunction } from "../describe";
import { number, units } from "../vocabulary";
import { palmer } from "./fermentables";

export const wortYield = describeFunction({
  id: "WORT.YIELD",
  summary: "Extract yield in per cent from a malt's points, as malt lists print them.",
  parameters: {
    points: number("points", {
      doc: "What the fermentable can give: 300 L°/kg or 36 points per pound per US gallon is a usual malt.",
      limits: { above: 0, atMost: pureSugarPointsLPerKg },
      typical: 300,
      hint: () => "pure sugar gives the most there is",
    }),
    units,
  },
  result: { kind: "number", quantity: "percent", doc: "Extract, % of the mass as it is: what the malt bill's yield column wants." },
  equation: "yield = 100 × points / 385.56 L°/kg, or / 46.2 points·gal/lb",
  sources: [palmer],
  examples: [
    { arguments: [37, "us"], value: 80, tolerance: 1.7, from: "Palmer, How to Brew, Table 9, two-row lager malt (the table rounds)" },
    { arguments: [300], value: 77.81, tolerance: 0.01, from: "worked by hand: 300 / 385.56" },
  ],
  compute: ({ points }) => yieldPercentFromPoints(points),
});

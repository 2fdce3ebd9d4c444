import { efficiencyPercent } from "../../core/wort/expected-gravity";
import { describeFunction } from "../describe";
import { gravity, units } from "../vocabulary";
import { fermentables, palmer, toFermentable, wholeVolume } from "./fermentables";
import { sugarSolutions } from "./sugar-tables";

export const wortEfficiency = describeFunction({
  id: "WORT.EFFICIENCY",
  summary: "Efficiency that your brew day reached, from the malt bill and the gravity you measured.",
  parameters: { fermentables, volume: wholeVolume, gravity: gravity("Gravity measured in that volume."), units },
  result: { kind: "number", quantity: "percent", doc: "Share of the mashed and steeped grain's extract that reached the wort, %." },
  equation:
    "efficiency = (sugar in a litre at this SG × volume − extract and sugar) / extract of the grain at full yield; sugar in a litre by the density of sugar solutions",
  sources: [sugarSolutions, palmer],
  examples: [
    {
      arguments: [[[5, 80, "mash"]], 20, 1.054],
      value: 70.2,
      tolerance: 0.1,
      from: "worked by hand from a printed table of sucrose solutions: 1.054 × 0.99823 = 1.05213 kg/L is 13.35 % or 140.4 g/L; 20 × 0.1404 / (5 × 0.8) = 0.702",
    },
    {
      arguments: [
        [
          [10, 80, "mash"],
          [1, 100, "sugar"],
        ],
        5,
        1.06,
        "us",
      ],
      value: 68.9,
      tolerance: 0.15,
      from: "worked by hand from a printed table of sucrose solutions: 1.06 × 0.99823 = 1.05812 kg/L is 14.76 % or 156.1 g/L, 1.303 lb in a US gallon; (5 × 1.303 − 1) / (10 × 0.8) = 0.689",
    },
  ],
  cautions: ["Stir well and measure cold: layered or hot wort makes the figure wander by several per cent."],
  compute: ({ fermentables: rows, volume, gravity: measured }) => efficiencyPercent(rows.map(toFermentable), volume, measured),
});

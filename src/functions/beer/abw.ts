import { alcoholByMass, alcoholByMassFromVolume, alcoholByVolumeSimple, alcoholPerGravity } from "../../core/beer/alcohol";
import { describeFunction } from "../describe";
import { alcoholMethod } from "./abv";
import { balling, cutaia, finalGravity, originalGravity } from "./gravities";

export const beerAbw = describeFunction({
  id: "BEER.ABW",
  summary: "Alcohol by mass of a beer, from its gravity before and after fermentation.",
  parameters: { originalGravity, finalGravity, method: alcoholMethod },
  result: { kind: "number", quantity: "percent", doc: "Alcohol, grams in 100 g of beer." },
  equation: "extract: RE = 0.1808 OE + 0.8192 AE, ABW = (OE − RE) / (2.0665 − 0.010665 OE); simple and kit: ABW = ABV × 0.791 / FG",
  sources: [balling, cutaia, { cite: "common practice", where: "131.25 and 131 for each point lost; from memory" }],
  examples: [
    {
      arguments: [1.05718, 1.01215],
      value: 4.72,
      tolerance: 0.12,
      from: "Cutaia et al. 2009, Table III, pilot beers I: 14.08 °P and 3.11 °P, mean of the beers measured",
    },
    { arguments: [1.05, 1.01, "kit"], value: 4.104, tolerance: 0.001, from: "worked by hand: 131 × 0.040 × 0.791 / 1.010" },
  ],
  cautions: ["As good as GYLE.BEER.ABV, and no better: never use the figure for duty, labels or driving."],
  compute: (values) =>
    values.method === "extract"
      ? alcoholByMass(values.originalGravity, values.finalGravity)
      : alcoholByMassFromVolume(
          alcoholByVolumeSimple(values.originalGravity, values.finalGravity, alcoholPerGravity[values.method]),
          values.finalGravity,
        ),
});

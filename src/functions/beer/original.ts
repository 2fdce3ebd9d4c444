import { originalGravityFromAlcohol } from "../../core/beer/original-gravity";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { percent } from "../vocabulary";
import { balling, cutaia, finalGravity } from "./gravities";

export const beerOriginal = describeFunction({
  id: "BEER.ORIGINAL",
  summary: "Original gravity that a beer must have had, or needs, for this much alcohol.",
  parameters: {
    abv: percent("Alcohol, % by volume.", { limits: { above: 0.2, atMost: 30 }, typical: 5, hint: percentHint }),
    finalGravity,
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C before fermentation." },
  equation: "the OG for which GYLE.BEER.ABV(OG, FG) is the alcohol given",
  sources: [balling, cutaia],
  examples: [
    { arguments: [5.314, 1.01], value: 1.05, tolerance: 2e-5, from: "the inverse of the BEER.ABV example" },
    { arguments: [3.967, 1.01], value: 1.04, tolerance: 2e-5, from: "computed by the reference model of the same equations" },
  ],
  compute: (values) => originalGravityFromAlcohol(values.abv, values.finalGravity),
});

import { realExtractPlato } from "../../core/beer/real-extract";
import { describeFunction } from "../describe";
import { balling, cutaia, finalGravity, originalGravity } from "./gravities";

export const beerExtract = describeFunction({
  id: "BEER.EXTRACT",
  summary: "Real extract of a beer: what is left in it besides water and alcohol.",
  parameters: { originalGravity, finalGravity },
  result: {
    kind: "number",
    quantity: "plato",
    doc: "Real extract, °P (g in 100 g); always above the apparent extract that a hydrometer shows.",
  },
  equation: "RE = (AE + 0.4654 ABW − 0.003615 ABW²) / 0.9962, with ABW as in GYLE.BEER.ABW",
  sources: [balling, cutaia],
  examples: [
    {
      arguments: [1.05718, 1.01215],
      value: 5.28,
      tolerance: 0.06,
      from: "Cutaia et al. 2009, Table III, pilot beers I: 14.08 °P and 3.11 °P, mean of the beers measured",
    },
    { arguments: [1.05, 1.01], value: 4.454, tolerance: 0.001, from: "computed from the equation" },
  ],
  compute: (values) => realExtractPlato(values.originalGravity, values.finalGravity),
});

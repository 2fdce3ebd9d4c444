import { carbohydrateG } from "../../core/beer/energy";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { cutaia, finalGravity, originalGravity, serving } from "./gravities";

export const beerCarbs = describeFunction({
  id: "BEER.CARBS",
  summary: "Carbohydrate in a glass of beer, grams, from its gravity before and after fermentation.",
  parameters: { originalGravity, finalGravity, serving, units },
  result: { kind: "number", quantity: "number", doc: "Carbohydrate of the serving, g (grams in both unit systems)." },
  equation: "g in 100 g = 0.93 RE − 0.1; × FG for 100 mL",
  sources: [cutaia, { cite: "usual figures, from memory", where: "protein 7 % of the real extract, ash 0.1 %" }],
  examples: [
    { arguments: [1.05, 1.01, 330], value: 13.47, tolerance: 0.02, from: "computed from the equation" },
    { arguments: [1.04, 1.01, 12, "us"], value: 12.94, tolerance: 0.02, from: "computed from the equation" },
  ],
  cautions: ["An estimate, good to about ±0.3 g in 100 mL: not for labels, diets or diabetes."],
  compute: (values) => carbohydrateG(values.originalGravity, values.finalGravity, values.serving),
});

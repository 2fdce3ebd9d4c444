import { energyKj } from "../../core/beer/energy";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { cutaia, finalGravity, originalGravity, serving } from "./gravities";
import { primed } from "./primed";

export const beerEnergy = describeFunction({
  id: "BEER.ENERGY",
  summary: "Food energy of a glass of beer, from its gravity before and after fermentation.",
  parameters: { originalGravity, finalGravity, serving, units, primed },
  result: { kind: "number", quantity: "energy", doc: "Energy of the serving." },
  equation:
    "kcal in 100 g = 6.9 ABW + 4 (RE − 0.1); × FG for 100 mL; 1 kcal = 4.184 kJ; each volume of gas from priming comes with 2.07 g alcohol in a litre",
  sources: [
    {
      cite: "ASBC Methods of Analysis, Beer-33",
      where: "6.9 kcal/g alcohol, 4 kcal/g extract less ash, as quoted in the Oxford Companion to Beer; the ash, 0.1 %, from memory",
    },
    cutaia,
  ],
  examples: [
    {
      arguments: [1.048, 1.01, 12, "us"],
      value: 163,
      tolerance: 7,
      from: "a worked example of the same formula on a home brewer's page; it does not say how it got its real extract",
    },
    { arguments: [1.05, 1.01, 330], value: 643.2, tolerance: 0.5, from: "computed from the equation" },
    { arguments: [1.05, 1.01, 330, null, 1.6], value: 674.8, tolerance: 0.5, from: "the same, and 0.33 L × 3.311 g × 6.9 kcal × 4.184" },
  ],
  cautions: ["An estimate: not for food labels."],
  compute: (values) => energyKj(values.originalGravity, values.finalGravity, values.serving, values.primed),
});

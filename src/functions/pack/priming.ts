import { atmosphereAtBar } from "../../core/pack/local-air";
import { primingSugarG, refuseForBottles } from "../../core/pack/priming";
import { residualVolumes } from "../../core/pack/residual";
import { describeFunction } from "../describe";
import { units, volume } from "../vocabulary";
import { altitude } from "./place";
import { primedBottle, primingSources, sugar, sugarYields, targetCo2 } from "./priming-parameters";
import { warmestSinceFermentation } from "./storage";
import { solubilitySources } from "./solubility-source";

export const packPriming = describeFunction({
  id: "PACK.PRIMING",
  summary: "Sugar to stir into finished beer before bottling, so that it carbonates in the bottle.",
  parameters: {
    volume: volume("Beer to be bottled, without the sediment left behind."),
    co2: targetCo2,
    temperature: warmestSinceFermentation,
    sugar,
    units,
    bottle: primedBottle,
    altitude,
  },
  result: { kind: "number", quantity: "smallMass", doc: "Sugar for the whole batch." },
  equation: `m = V (CO2 − GYLE.PACK.RESIDUAL) × 1.977 / yield; ${sugarYields}`,
  sources: [...primingSources, ...solubilitySources],
  examples: [
    { arguments: [19, 2.4, 20, "sucrose"], value: 115.7, tolerance: 0.5, from: "worked by hand: 19 × (2.4 − 0.816) × 1.977 / 0.5143" },
    {
      arguments: [5, 2.4, 68, null, "us"],
      value: 4.85,
      tolerance: 0.3,
      from: "common practice: 4.5 to 5 oz of corn sugar for five US gallons",
    },
  ],
  cautions: [
    "Only for beer that has finished fermenting: two equal readings a day apart (GYLE.LOG.STEADY).",
    "Weigh the sugar. Boil it for a few minutes in two cups (half a litre) of water, let it cool covered, and mix it evenly into the beer.",
    "Too much sugar bursts bottles: ask GYLE.PACK.CHECK what your bottles bear.",
  ],
  compute: ({ volume, co2, temperature, sugar, bottle, altitude }) => {
    refuseForBottles(co2, bottle);
    return primingSugarG(volume, co2, residualVolumes(temperature, atmosphereAtBar(altitude)), sugar);
  },
});

import { primingSugarG, primingSugars } from "../../core/pack/priming";
import { residualRange } from "../../core/pack/residual";
import { describeFunction } from "../describe";
import { choice, co2, optional, units, volume } from "../vocabulary";
import { warmestSinceFermentation } from "./storage";

export const packPriming = describeFunction({
  id: "PACK.PRIMING",
  summary: "Sugar to stir into finished beer before bottling, so that it carbonates in the bottle.",
  parameters: {
    volume: volume("Beer to be bottled, without the sediment left behind."),
    co2: co2("Carbonation wished for; 2.2 to 2.6 suits most ales.", {
      limits: { above: 0, atMost: 4.5 },
      hint: (typed) => (typed > 4.5 ? "no beer bottle is meant to hold more; ask GYLE.PACK.CHECK" : undefined),
    }),
    temperature: warmestSinceFermentation(residualRange),
    sugar: optional(
      choice("dextrose is corn sugar as sold (monohydrate), glucose the dry sugar, sucrose is table sugar, malt extract is dry and varies by some 7 %.", primingSugars),
      "dextrose",
    ),
    units,
  },
  result: { kind: "number", quantity: "smallMass", doc: "Sugar for the whole batch." },
  equation: "m = V (CO2 − residual) × 1.977 / yield; g CO2 per g: dextrose 0.444, glucose 0.489, sucrose 0.514, malt extract 0.360, honey 0.384",
  sources: [
    { cite: "J. L. Gay-Lussac, 1815, with today's atomic weights", where: "C6H12O6 → 2 C2H5OH + 2 CO2: 180 g of sugar give 88 g of gas" },
    { cite: "M. Hall, Brew by the Numbers, Zymurgy, 1995", where: "carbon dioxide left from fermentation; from memory" },
    { cite: "E. Crane, A Book of Honey, 1980", where: "appendix 2, table 4: sugars of 490 American honeys (1962)" },
  ],
  examples: [
    { arguments: [19, 2.4, 20, "sucrose"], value: 112.37, tolerance: 0.05, from: "worked by hand: 19 × (2.4 − 0.8615) × 1.977 / 0.5143" },
    { arguments: [5, 2.4, 68, null, "us"], value: 4.7, tolerance: 0.3, from: "common practice: 4.5 to 5 oz of corn sugar for five US gallons" },
  ],
  cautions: [
    "Only for beer that has finished fermenting: two equal readings a day apart (GYLE.LOG.STEADY).",
    "Weigh the sugar. Boil it for a few minutes in two cups (half a litre) of water, let it cool covered, and mix it evenly into the beer.",
    "Too much sugar bursts bottles: ask GYLE.PACK.CHECK what your bottles bear.",
  ],
  compute: ({ volume, co2, temperature, sugar }) => primingSugarG(volume, co2, temperature, sugar),
});

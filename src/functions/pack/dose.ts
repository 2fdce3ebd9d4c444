import { atmosphereAtBar } from "../../core/pack/local-air";
import { primingSugarG, refuseForBottles } from "../../core/pack/priming";
import { residualVolumes } from "../../core/pack/residual";
import { describeFunction } from "../describe";
import { number, omissible, units } from "../vocabulary";
import { perhapsLitres } from "./perhaps-litres";
import { altitude } from "./place";
import { primedBottle, primingSources, sugar, sugarYields, targetCo2 } from "./priming-parameters";
import { warmestSinceFermentation } from "./storage";
import { solubilitySources } from "./solubility-source";

const bottles = {
  kind: "table",
  doc: "The sizes of bottle, a row for each, and how many of it you have; the count may be left off.",
  columns: {
    size: number("bottleVolume", {
      doc: "What one bottle holds.",
      limits: { atLeast: 50, atMost: 20000 },
      typical: 500,
      hint: perhapsLitres,
    }),
    count: omissible(number("count", { doc: "How many of this size.", limits: { atLeast: 0, atMost: 10000 }, typical: 20, blank: "zero" })),
  },
  layouts: [["size", "count"], ["size"]],
} as const;

export const packDose = describeFunction({
  id: "PACK.DOSE",
  summary: "Priming sugar for each bottle, when you bottle in several sizes or dose the bottles one by one.",
  parameters: { bottles, co2: targetCo2, temperature: warmestSinceFermentation, sugar, units, bottle: primedBottle, altitude },
  result: {
    kind: "grid",
    doc: "Beside each row of the bottles, without a heading: sugar for one bottle, g, and for all of that size, g, when their number is given. Grams also with us units.",
    columns: ["g in each", "g for all of them"],
  },
  equation: `m = bottle (L) × (CO2 − GYLE.PACK.RESIDUAL) × 1.977 / yield; ${sugarYields}`,
  sources: [...primingSources, ...solubilitySources],
  examples: [
    {
      arguments: [
        [
          [330, 24],
          [500, 12],
          [750, 4],
        ],
        2.4,
        20,
        "sucrose",
      ],
      value: [
        [2.009, 48.22],
        [3.045, 36.53],
        [4.567, 18.27],
      ],
      tolerance: 0.2,
      from: "worked by hand: (2.4 − 0.816) × 1.977 / 0.5143 = 6.089 g for each litre",
    },
    {
      arguments: [[["fl oz"], [12], [22]], 2.4, 68, null, "us"],
      value: [[2.5], [4.59]],
      tolerance: 0.01,
      from: "worked by hand: 7.051 g for each litre, in 0.3549 and 0.6506 L",
    },
  ],
  cautions: [
    "Only for beer that has finished fermenting: two equal readings a day apart (GYLE.LOG.STEADY). One double dose bursts one bottle: dose in a fixed order, and cap each as you go.",
    "Weigh the sugar for all, boil it in a measured amount of water, and share it out with a syringe: dry sugar makes beer foam over.",
    "Ask GYLE.PACK.CHECK what each kind of bottle bears; the weakest kind decides.",
  ],
  compute: ({ bottles: sizes, co2, temperature, sugar: kind, bottle, altitude }, { show }) => {
    refuseForBottles(co2, bottle);
    const residual = residualVolumes(temperature, atmosphereAtBar(altitude));
    const answer: (string | number)[][] = Array.from({ length: sizes.height }, () => (sizes[0]?.count === undefined ? [""] : ["", ""]));
    for (const { size, count, rowNumber } of sizes) {
      const eachG = primingSugarG(size / 1000, co2, residual, kind);
      answer[rowNumber - 1] = (count === undefined ? [eachG] : [eachG, eachG * count]).map((grams) => show("grams", grams));
    }
    return answer;
  },
});

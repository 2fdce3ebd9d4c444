import { primingSugarG } from "../../core/pack/priming";
import { describeFunction } from "../describe";
import { number, omissible, units } from "../vocabulary";
import { perhapsLitres } from "./perhaps-litres";
import { beerTemperature, primingSources, sugar, sugarYields, wishedCo2 } from "./priming-parameters";

const bottles = {
  kind: "table",
  doc: "The sizes of bottle, a row for each, and how many of it you have; the count may be left off.",
  columns: {
    size: number("bottleVolume", { doc: "What one bottle holds.", limits: { atLeast: 50, atMost: 20000 }, typical: 500, hint: perhapsLitres }),
    count: omissible(number("count", { doc: "How many of this size.", limits: { atLeast: 0, atMost: 10000 }, typical: 20, blank: "zero" })),
  },
  layouts: [["size", "count"], ["size"]],
} as const;

export const packDose = describeFunction({
  id: "PACK.DOSE",
  summary: "Priming sugar for each bottle, when you bottle in several sizes or dose the bottles one by one.",
  parameters: { bottles, co2: wishedCo2, temperature: beerTemperature, sugar, units },
  result: {
    kind: "grid",
    doc: "Beside each row of the bottles, without a heading: sugar for one bottle, g, and for all of that size, g, when their number is given. Grams also with us units.",
    columns: ["g in each", "g for all of them"],
  },
  equation: `m = bottle (L) × (CO2 − residual) × 1.977 / yield; ${sugarYields}`,
  sources: primingSources,
  examples: [
    { arguments: [[[330, 24], [500, 12], [750, 4]], 2.4, 20, "sucrose"], value: [[1.952, 46.84], [2.957, 35.49], [4.436, 17.74]], tolerance: 0.01, from: "worked by hand: (2.4 − 0.8615) × 1.977 / 0.5143 = 5.914 g for each litre" },
    { arguments: [[["fl oz"], [12], [22]], 2.4, 68, null, "us"], value: [[2.43], [4.45]], tolerance: 0.01, from: "worked by hand: 6.848 g for each litre, in 0.3549 and 0.6506 L" },
  ],
  cautions: [
    "Only for beer that has finished fermenting: two equal readings a day apart (GYLE.LOG.STEADY). One double dose bursts one bottle: dose in a fixed order, and cap each as you go.",
    "Weigh the sugar for all, boil it in a measured amount of water, and share it out with a syringe: dry sugar makes beer foam over.",
    "Ask GYLE.PACK.CHECK what each kind of bottle bears; the weakest kind decides.",
  ],
  compute: ({ bottles: sizes, co2, temperature, sugar: kind }, { show }) => {
    const answer: (string | number)[][] = Array.from({ length: sizes.height }, () => (sizes[0]?.count === undefined ? [""] : ["", ""]));
    for (const { size, count, rowNumber } of sizes) {
      const eachG = primingSugarG(size / 1000, co2, temperature, kind);
      answer[rowNumber - 1] = (count === undefined ? [eachG] : [eachG, eachG * count]).map((grams) => show("grams", grams));
    }
    return answer;
  },
});

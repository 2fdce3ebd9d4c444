import { checkBottle } from "../../core/pack/bottle-check";
import { bottleKinds } from "../../core/pack/bottle-kinds";
import { describeFunction } from "../describe";
import { choice, co2, gravity, omissible, temperature, units } from "../vocabulary";
import { checkWords, readingError } from "./check-words";
import { solubilityEquation, solubilitySources } from "./solubility-source";

export const packCheck = describeFunction({
  id: "PACK.CHECK",
  summary: "Holds the pressure that your bottles will see against what their kind may bear.",
  parameters: {
    co2: co2("Carbonation aimed at, in volumes of gas to one of beer, as given to GYLE.PACK.PRIMING.", {
      limits: { atLeast: 0.5, atMost: 10 },
      hint: (typed) => (typed < 0.5 ? "fermented beer holds about 0.7 or more by itself" : undefined),
    }),
    temperature: temperature("The warmest place the bottles will ever stand: a summer attic, a car.", { atLeast: 1, atMost: 45 }, 28),
    bottle: choice(
      "ordinary beer bottle (3.0 volumes), heavy refillable half litre (3.5), thick-walled (4.0), sparkling wine (6.0), plastic soda bottle (3.5), keg (4 bar; its own plate comes first).",
      bottleKinds,
      { beer: "ordinary", pet: "plastic", soda: "plastic", champagne: "sparkling", wine: "sparkling", refillable: "heavy" },
    ),
    gravity: omissible(gravity("Gravity now. With expected, each 0.001 still to fall adds 0.5 volumes. Left out, nothing is added for that.", { typical: 1.012 })),
    expected: omissible(gravity("Final gravity you expect, for example from GYLE.YEAST.FINISH. Left out, what fermentation may still add is not counted.", { typical: 1.012 })),
    units,
  },
  result: { kind: "text", doc: "within, close or over, then the reasons. close begins at nine tenths of a limit." },
  equation: `CO2 total = CO2 + 0.5 × 1000 (gravity − expected); p = CO2 total × 1.977 / S − 1.01325 bar; ${solubilityEquation}`,
  sources: [
    { cite: "common practice", where: "working limits of bottles, on the low side, from memory; above 3.5 bar no ordinary glass" },
    { cite: "C. J. N. Balling, Die Gährungschemie, 1865", where: "carbon dioxide from extract: 0.49 volumes for each 0.001; pure sugar gives 0.55" },
    ...solubilitySources,
  ],
  examples: [
    {
      arguments: [2.4, 25, "ordinary", 1.012, 1.012],
      value: "within: 2.4 volumes at 25 °C make 2.35 bar in an ordinary beer bottle; its working limit is 3 volumes and 3.5 bar. Holds only for sound bottles of that kind, evenly primed.",
      from: "worked by hand: 2.4 × 1.977 / 1.4090 − 1.01325 = 2.35 bar",
    },
    {
      arguments: [2.4, 77, "ordinary", 1.016, 1.012, "us"],
      value:
        "over: 4.4 volumes at 77 °F make 74.8 psi in an ordinary beer bottle; its working limit is 3 volumes and 50.8 psi. Of this 2 volumes come from fermentation still to be done. Do not bottle like this: wait until two readings a day apart agree, take less sugar or stronger bottles, or store cooler. Bottles already filled: do not open or move them; keep people away and cool the room.",
      from: "worked by hand: four points still to fall add 2.0 volumes; (4.4 × 1.977 / 1.4090 − 1.01325) bar / 0.068948",
    },
  ],
  cautions: [
    "No verdict makes a bottle safe: glass that was knocked, scratched or meant to be used once breaks far below these limits. Wear eye protection when you handle full bottles.",
    "The maker's own figure for the bottle comes first. Never fill window-thin, twist-off or one-way glass.",
  ],
  compute: ({ co2, temperature, bottle, gravity, expected }, context) => {
    const toFall = gravity === undefined || expected === undefined ? undefined : 1000 * (gravity - expected);
    const check = checkBottle(co2, temperature, bottle, toFall ?? 0);
    const counted = toFall === undefined ? "not counted" : toFall < -readingError ? "passed" : "counted";
    return checkWords(bottle, temperature, check, counted, context);
  },
});

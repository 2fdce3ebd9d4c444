import { expectedAttenuation, mashRest } from "../../core/yeast/mash-rest";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { percent, temperature, units } from "../vocabulary";

export const yeastExpect = describeFunction({
  id: "YEAST.EXPECT",
  summary: "Attenuation to expect of a yeast in a wort mashed at one temperature for an hour.",
  parameters: {
    restTemperature: temperature("Temperature of the single rest.", { atLeast: 55, atMost: 80 }, 67, {
      covered: { from: mashRest.coveredFromC, to: mashRest.coveredToC, by: "single rests of an hour" },
    }),
    attenuation: percent("Apparent attenuation by the maker, %: usually 70 to 80. It is taken to hold for a mash of 66.5 °C (152 °F).", {
      limits: { above: 1, atMost: 110 },
      typical: 75,
      hint: percentHint,
    }),
    units,
  },
  result: { kind: "number", quantity: "percent", doc: "Apparent attenuation, to within about 4." },
  equation: "A = attenuation × (1 − 0.0027 (T − 64.5)²) / (1 − 0.0027 × 2²), T in °C",
  sources: [
    {
      cite: "K. Troester, Effects of Mash Parameters on Fermentability and Efficiency in Single Infusion Mashing, 2009",
      where: "limit of attenuation by temperature of a single rest; our parabola through it, from memory",
    },
    {
      cite: "H. Windisch, P. Kolbach and E. Schild, Wochenschrift für Brauerei 49, 1932",
      where: "the same course, as textbooks quote it; from memory",
    },
  ],
  modelSpread: { plusOrMinus: 4, from: "our judgement: malt, length of the rest and yeast each move it by some per cent" },
  examples: [
    { arguments: [66.5, 75], value: 75, tolerance: 1e-9, from: "the maker's own figure, at the temperature that it is taken to hold for" },
    { arguments: [158, 75, "us"], value: 69.63, tolerance: 0.02, from: "worked by hand: 75 × (1 − 0.0027 × 30.25) / 0.9892" },
  ],
  cautions: ["A forecast, no licence to bottle: bottle when the gravity stands still (GYLE.LOG.STEADY)."],
  compute: ({ restTemperature, attenuation }) => expectedAttenuation(restTemperature, attenuation),
});

import { atmosphereAtBar } from "../../core/pack/local-air";
import { oxygenGases, oxygenMgPerL, oxygenRange } from "../../core/yeast/oxygen";
import { describeFunction } from "../describe";
import { altitude } from "../pack/place";
import { choice, gravity, optional, temperature, units } from "../vocabulary";

export const yeastOxygen = describeFunction({
  id: "YEAST.OXYGEN",
  summary: "How much oxygen the wort can take up from air, or from pure oxygen.",
  parameters: {
    temperature: temperature("The wort.", { atLeast: -2, atMost: 45 }, 18, { covered: oxygenRange, zero: "asked" }),
    gravity: optional(gravity("Gravity of the wort; 1.000, water, when left out.", { limits: { atLeast: 1, atMost: 1.2 } }), 1),
    gas: optional(choice("air, or oxygen from a cylinder.", oxygenGases, { o2: "oxygen", pure: "oxygen" }), "air"),
    altitude: { ...altitude, doc: "Height above the sea; sea level when left out. Thinner air holds less." },
    units,
  },
  result: {
    kind: "number",
    quantity: "concentration",
    doc: "Oxygen when the wort has taken up all it can, mg/L; yeast likes about 8 to 10.",
  },
  equation:
    "mg/L = 31998 × 55.51 × share × (air − vapour) / H × 10^(−0.000435 × sugar in g/L); share = 0.2095 in air; ln (H / MPa) = 1.17395 + 5742.622 / T − 1070683 / T², T in K; vapour and air as in GYLE.PACK.PRESSURE",
  sources: [
    {
      cite: "T. R. Rettich, R. Battino and E. Wilhelm, Journal of Chemical Thermodynamics 32, 2000",
      where: "Henry's constant of oxygen in water; from memory",
    },
    {
      cite: "G. Quicker, A. Schumpe, B. König and W.-D. Deckwer, Biotechnology and Bioengineering 23, 1981",
      where: "sugar lets in less: 0.149 L/mol for sucrose; from memory",
    },
    { cite: "common practice", where: "8 to 10 mg/L for yeast, from memory" },
  ],
  examples: [
    { arguments: [20], value: 9.09, tolerance: 0.05, from: "EN 25814, saturation table, 20 °C, 1013.25 hPa" },
    {
      arguments: [20, 1.04837],
      value: 8.02,
      tolerance: 0.06,
      from: "worked by hand: 12 °P is 125.6 g/L; 9.09 × 10^(−0.149 × 0.367)",
    },
    { arguments: [68, null, "oxygen", null, "us"], value: 43.4, tolerance: 0.3, from: "worked by hand: 9.09 / 0.2095" },
  ],
  cautions: [
    "Oxygen makes all that burns burn fiercely: no flame, spark or grease near the cylinder and its valve, and fresh air in the room.",
    "This is the most that goes in: a minute of shaking brings some two thirds of it from air. Only into chilled wort, and only before fermentation.",
    "Good to about 5 % in wort.",
  ],
  compute: ({ temperature: wort, gravity: strength, gas, altitude: height }) => oxygenMgPerL(wort, strength, gas, atmosphereAtBar(height)),
});

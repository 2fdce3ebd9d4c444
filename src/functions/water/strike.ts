import { strikeTemperatureC } from "../../core/water/mash";
import { describeFunction } from "../describe";
import { temperature, units } from "../vocabulary";
import { mashParameters, mashSources, mashTemperature } from "./mash";

export const waterStrike = describeFunction({
  id: "WATER.STRIKE",
  summary: "How hot the water must be so that the mash settles at the temperature wanted.",
  parameters: {
    ...mashParameters,
    grainTemperature: temperature("Temperature of the dry grain.", { atLeast: -20, atMost: 45 }, 20),
    target: mashTemperature("Temperature that the mash is to have.", 67),
    units,
  },
  result: { kind: "number", quantity: "temperature", doc: "Temperature of the water when the grain goes in, in a warmed vessel." },
  equation: "T = target + 0.40 × grain (kg) × (target − grain temperature) / water (kg)",
  sources: mashSources,
  examples: [
    { arguments: [5, 15, 20, 67], value: 73.28, tolerance: 0.01, from: "worked by hand: 67 + 0.40 × 5 × 47 / (15 × 0.9982)" },
    {
      arguments: [8, 2, 70, 104, "us"],
      value: 110.8,
      tolerance: 0.5,
      from: "Palmer, How to Brew, rule 0.2 / r × (T2 − T1) + T2 at 1 qt/lb; from memory",
    },
  ],
  cautions: [
    "A cold mash tun takes a few degrees more: warm it first, stir, measure, and keep a jug of hot and one of cold water at hand.",
    "Hot water and hot mash scald; lift no full kettle.",
  ],
  compute: ({ grainMass, waterVolume, grainTemperature, target }) => strikeTemperatureC(grainMass, waterVolume, grainTemperature, target),
});

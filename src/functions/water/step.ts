import { stepVolumeL } from "../../core/water/mash";
import { describeFunction } from "../describe";
import { temperature, units } from "../vocabulary";
import { mashParameters, mashSources, mashTemperature } from "./mash";

export const waterStep = describeFunction({
  id: "WATER.STEP",
  summary: "How much hot water lifts the mash to the next temperature.",
  parameters: {
    ...mashParameters,
    from: mashTemperature("Temperature of the mash now.", 55),
    target: mashTemperature("Temperature that it is to have.", 67),
    additionTemperature: temperature("Temperature of the water that is added, often boiling.", { atLeast: 20, atMost: 102 }, 100),
    units,
  },
  result: { kind: "number", quantity: "volume", doc: "Water to add, cold volume." },
  equation: "added (kg) = (0.40 × grain + water) (target − from) / (addition temperature − target)",
  sources: mashSources,
  examples: [
    { arguments: [5, 15, 55, 67, 100], value: 6.183, tolerance: 0.001, from: "worked by hand: (2 + 14.973) × 12 / 33 / 0.9982" },
    {
      arguments: [10, 4, 130, 152, 212, "us"],
      value: 1.643,
      tolerance: 0.002,
      from: "worked by hand: (0.40 × 4.536 + 15.114) kg × 22 / 60 / 0.9982 = 6.218 L",
    },
  ],
  cautions: ["Pour boiling water slowly while stirring, and see that the vessel has room for it."],
  compute: ({ grainMass, waterVolume, from, target, additionTemperature }) =>
    stepVolumeL(grainMass, waterVolume, from, target, additionTemperature),
});

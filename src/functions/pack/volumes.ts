import { atmosphereAtBar } from "../../core/pack/local-air";
import { solubilityRange, volumesAtGaugePressure } from "../../core/pack/solubility";
import { describeFunction } from "../describe";
import { number, temperature, units } from "../vocabulary";
import { altitude } from "./place";
import { localAir, solubilityEquation, solubilitySources } from "./solubility-source";

export const packVolumes = describeFunction({
  id: "PACK.VOLUMES",
  summary: "Carbonation of beer that has rested long enough under a known pressure.",
  parameters: {
    pressure: number("pressure", { doc: "Gauge pressure on the keg.", limits: { above: 0, atMost: 6 }, typical: 0.8 }),
    temperature: temperature("The beer in the keg.", { atLeast: -2, atMost: 60 }, 4, { covered: solubilityRange, zero: "asked" }),
    units,
    altitude,
  },
  result: { kind: "number", quantity: "co2", doc: "Carbon dioxide in the beer, volumes." },
  equation: `p = gauge + air; ${solubilityEquation}; ${localAir}`,
  sources: solubilitySources,
  examples: [
    {
      arguments: [11.2, 38, "us"],
      value: 2.5,
      tolerance: 0.11,
      from: "keg table that fits the chart of the American Society of Brewing Chemists, 38 °F and 11.2 psi",
    },
    { arguments: [0.845, 4], value: 2.5, tolerance: 0.01, from: "the pressure for 2.5 volumes at 4 °C, backwards" },
  ],
  cautions: [
    "Good to about 5 %, and only when the beer has come to rest: a week under pressure, or a day of shaking in the cold.",
    "Keep to the pressure on the keg's own plate; carbon dioxide suffocates in a closed room.",
  ],
  compute: ({ pressure, temperature, altitude }) => volumesAtGaugePressure(pressure, temperature, atmosphereAtBar(altitude)),
});

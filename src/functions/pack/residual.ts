import { atmosphereAtBar } from "../../core/pack/local-air";
import { residualVolumes } from "../../core/pack/residual";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { altitude } from "./place";
import { localAir, solubilityEquation, solubilitySources } from "./solubility-source";
import { warmestSinceFermentation } from "./storage";

export const packResidual = describeFunction({
  id: "PACK.RESIDUAL",
  summary: "Carbon dioxide that is already in the beer from its fermentation, before any priming.",
  parameters: { temperature: warmestSinceFermentation, units, altitude },
  result: { kind: "number", quantity: "co2", doc: "Carbon dioxide in the beer, volumes." },
  equation: `p = air; ${solubilityEquation}; ${localAir}`,
  sources: [
    {
      cite: "D. Draper, article on priming, 1990s",
      where:
        "table of saturation against temperature, 0 to 22 °C: the solubility in water under an atmosphere of gas without water vapour; ours is 5 % lower for beer and 1 to 3 % for the vapour",
    },
    ...solubilitySources,
  ],
  examples: [
    { arguments: [20], value: 0.816, tolerance: 0.02, from: "Draper's table, 20 °C: 0.88, × 0.95 for beer, × 0.977 for water vapour" },
    { arguments: [50, "us"], value: 1.126, tolerance: 0.02, from: "Draper's table, 10 °C: 1.20, × 0.95 × 0.988" },
    { arguments: [20, null, 1609], value: 0.67, tolerance: 0.02, from: "the same, × 0.82 for the thinner air" },
  ],
  cautions: ["For beer fermented under an airlock. Beer kept under pressure holds more."],
  compute: ({ temperature, altitude }) => residualVolumes(temperature, atmosphereAtBar(altitude)),
});

import { residualRange, residualVolumes } from "../../core/pack/residual";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { warmestSinceFermentation } from "./storage";

export const packResidual = describeFunction({
  id: "PACK.RESIDUAL",
  summary: "Carbon dioxide that is already in the beer from its fermentation, before any priming.",
  parameters: { temperature: warmestSinceFermentation(residualRange), units },
  result: { kind: "number", quantity: "co2", doc: "Carbon dioxide in the beer, volumes." },
  equation: "CO2 = 3.0378 − 0.050062 F + 0.00026555 F², F in °F",
  sources: [
    { cite: "M. Hall, Brew by the Numbers, Zymurgy, 1995", where: "polynomial for dissolved carbon dioxide; from memory" },
    { cite: "D. Draper, article on priming, 1990s", where: "table of saturation against temperature, 0 to 22 °C" },
  ],
  examples: [
    { arguments: [20], value: 0.88, tolerance: 0.03, from: "Draper's table, 20 °C" },
    { arguments: [50, "us"], value: 1.2, tolerance: 0.03, from: "Draper's table, 10 °C" },
  ],
  cautions: ["For beer fermented under an airlock. Beer kept under pressure holds more."],
  compute: ({ temperature }) => residualVolumes(temperature),
});

import { kegGaugeBar, solubilityRange } from "../../core/pack/solubility";
import { describeFunction } from "../describe";
import { co2, temperature, units } from "../vocabulary";
import { solubilityEquation, solubilitySources } from "./solubility-source";

export const packPressure = describeFunction({
  id: "PACK.PRESSURE",
  summary: "Pressure to set on a keg so that the beer takes up, and keeps, the carbonation you wish for.",
  parameters: {
    co2: co2("Carbonation wished for, in volumes of gas to one of beer; 2.2 to 2.6 suits most ales.", {
      limits: { above: 0, atMost: 5 },
      hint: (typed) => (typed > 5 ? "beer is not served with more than that" : undefined),
    }),
    temperature: temperature("The beer in the keg.", { atLeast: -2, atMost: 60 }, 4, { covered: solubilityRange }),
    units,
  },
  result: { kind: "number", quantity: "pressure", doc: "Gauge pressure, as the regulator shows it." },
  equation: `p = CO2 × 1.977 / S − 1.01325 bar; ${solubilityEquation}`,
  sources: solubilitySources,
  examples: [
    { arguments: [2.5, 38, "us"], value: 11.2, tolerance: 0.4, from: "published keg table, 38 °F and 2.5 volumes" },
    { arguments: [2.5, 20], value: 2.01, tolerance: 0.01, from: "worked by hand: 2.5 × 1.977 / 1.6366 − 1.01325" },
  ],
  cautions: [
    "Never above the pressure on the keg's own plate, and never without its relief valve.",
    "Good to about 5 %. Carbon dioxide smothers in a closed room: keep the cylinder upright, fastened and the room aired.",
  ],
  compute: ({ co2, temperature }) => kegGaugeBar(co2, temperature),
});

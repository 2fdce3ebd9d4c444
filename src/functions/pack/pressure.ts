import { BrewingError } from "../../core/brewing-error";
import { bottleLimits, carbonationLimits } from "../../core/pack/bottle-kinds";
import { atmosphereAtBar } from "../../core/pack/local-air";
import { kegGaugeBar, solubilityRange } from "../../core/pack/solubility";
import { describeFunction } from "../describe";
import { showQuantity } from "../quantities";
import { co2, temperature, units } from "../vocabulary";
import { altitude } from "./place";
import { localAir, solubilityEquation, solubilitySources } from "./solubility-source";

/** What no keg at home is set above: a cell cannot carry a caution, so there is no figure beyond it. */
const mostBar = bottleLimits.keg.gaugeBar;

export const packPressure = describeFunction({
  id: "PACK.PRESSURE",
  summary: "Pressure to set on a keg so that the beer takes up, and keeps, the target carbonation.",
  parameters: {
    co2: co2("Target carbonation, in volumes of gas to one of beer; 2.2 to 2.6 suits most ales.", { limits: carbonationLimits }),
    temperature: temperature("The beer in the keg.", { atLeast: -2, atMost: 60 }, 4, { covered: solubilityRange, zero: "asked" }),
    units,
    altitude,
  },
  result: {
    kind: "number",
    quantity: "pressure",
    doc: "Gauge pressure, as the regulator shows it; none above 4 bar (58 psi), which no keg at home is set to.",
  },
  equation: `gauge = p − air; ${solubilityEquation}; ${localAir}`,
  sources: solubilitySources,
  examples: [
    {
      arguments: [2.5, 38, "us"],
      value: 11.2,
      tolerance: 0.6,
      from: "keg table that fits the chart of the American Society of Brewing Chemists, 38 °F and 2.5 volumes",
    },
    {
      arguments: [2.5, 20],
      value: 2.087,
      tolerance: 0.005,
      from: "worked by hand: H = 141.3 MPa, S = 1.6428; 2.5 × 1.977 / S = 3.0085, × (1 + 0.0082 × 2.5) = 3.0702; + 0.0233 − 1.0133",
    },
    { arguments: [2.5, 4, null, 1609], value: 1.024, tolerance: 0.01, from: "as at sea level, 0.845, and 0.179 bar for the thinner air" },
  ],
  cautions: [
    "Never above the pressure on the keg's own plate, and never without its relief valve.",
    "Good to about 5 %. Carbon dioxide suffocates in a closed room: keep the cylinder upright, fastened and the room aired.",
  ],
  compute: ({ co2, temperature, altitude }, { units }) => {
    const gaugeBar = kegGaugeBar(co2, temperature, atmosphereAtBar(altitude));
    if (gaugeBar <= mostBar) return gaugeBar;
    throw new BrewingError(
      "impossible",
      `co2 is ${co2.toFixed(2)} volumes; at ${showQuantity("temperature", temperature, units)} that takes more than ${showQuantity("pressure", mostBar, units)}, which no keg at home is set to: chill the beer, or ask for less`,
    );
  },
});

import { BrewingError } from "../../core/brewing-error";
import { atmosphereAtBar } from "../../core/pack/local-air";
import { residualRange } from "../../core/pack/residual";
import { closedGaugeBar, gravityToClose, pointsInReserve } from "../../core/pack/spund";
import { describeFunction } from "../describe";
import { showQuantity } from "../quantities";
import { gravity, number, optional, temperature, units } from "../vocabulary";
import { altitude } from "./place";
import { targetCo2 } from "./priming-parameters";
import { localAir, solubilityEquation, solubilitySources } from "./solubility-source";

export const packSpund = describeFunction({
  id: "PACK.SPUND",
  summary: "The gravity at which to close a pressure vessel, so that the beer carbonates itself with the rest of its fermentation.",
  parameters: {
    gravity: gravity("Gravity now.", { typical: 1.025 }),
    expected: gravity("Final gravity you expect, for example from GYLE.YEAST.FINISH or a forced ferment.", { typical: 1.012 }),
    co2: targetCo2,
    temperature: temperature("The warmest that the beer will be in the closed vessel.", { atLeast: -2, atMost: 45 }, 18, {
      covered: residualRange,
      zero: "asked",
    }),
    rating: number("pressure", {
      doc: "Pressure that the vessel's own plate allows. A vessel without a plate, or of glass, must not be closed.",
      limits: { above: 0, atMost: 10 },
      typical: 4,
    }),
    headspace: optional(
      number("percent", {
        doc: "Share of the vessel free above the beer; 10 when left out.",
        limits: { above: 0, atMost: 80 },
        typical: 10,
      }),
      10,
    ),
    altitude,
    units,
  },
  result: {
    kind: "number",
    quantity: "gravity",
    doc: `Gravity at which to close. None where the vessel would see more than its plate allows, should fermentation go ${pointsInReserve} points further than expected.`,
  },
  equation: `closing gravity = expected + (CO2 − CO2 in the open + space) / 500; space = gauge × h / (0.083145 T) / 0.04492, h = headspace / (100 − headspace); CO2 in the open as GYLE.PACK.RESIDUAL, gauge as GYLE.PACK.PRESSURE: ${solubilityEquation}; ${localAir}`,
  sources: [
    { cite: "mass balance", where: "carbon dioxide in beer and space before closing + made after it = in the end" },
    { cite: "common practice", where: "half a volume of gas for each 0.001 of gravity; 0.49 by Balling's balance" },
    ...solubilitySources,
  ],
  examples: [
    {
      arguments: [1.025, 1.012, 2.4, 18, 4],
      value: 1.0155,
      tolerance: 0.0002,
      from: "worked by hand: 2.4 − 0.863 = 1.537 volumes; gauge 1.79 bar × 0.1111 / (0.083145 × 291.15) = 0.0082 mol or 0.183 volumes; 1.72 / 0.5 = 3.44 points",
    },
    {
      arguments: [1.02, 1.01, 2.4, 50, 60, 5, null, "us"],
      value: 1.01267,
      tolerance: 0.0002,
      from: "worked by hand: 2.4 − 1.126; 0.06 volumes above",
    },
  ],
  cautions: [
    "Only in a vessel made for pressure, below its plate, with a relief valve that works: set the spunding valve to the pressure of GYLE.PACK.PRESSURE, and never close it off. Never in glass, nor in a bucket.",
    "An expected gravity is a guess: yeast that goes further makes 0.5 volumes more for each point, and wild yeast much more. Watch the gauge every day.",
    "Let the pressure off slowly before you open: foam and lid fly. Carbon dioxide suffocates in a closed room: air it.",
  ],
  compute: (values, { units: asked }) => {
    const { gravity: now, expected, co2: wished, temperature: celsius, rating, headspace, altitude: height } = values;
    const closing = {
      co2Volumes: wished,
      temperatureC: celsius,
      atmosphereBar: atmosphereAtBar(height),
      headspacePercent: headspace,
      expectedGravity: expected,
    };
    const close = gravityToClose(closing);
    const most = closedGaugeBar(closing, pointsInReserve);
    if (most > rating)
      throw new BrewingError(
        "impossible",
        `rating is ${showQuantity("pressure", rating, asked)}; should fermentation go ${pointsInReserve} points further than expected, the vessel would see ${showQuantity("pressure", most, asked)}: keep it cooler, ask for less, or take a vessel that bears more`,
      );
    if (now < close - 1e-9)
      throw new BrewingError(
        "impossible",
        `gravity ${now.toFixed(4)} is below ${close.toFixed(4)}, where to close: too little is left to ferment; add the rest of the gas from a cylinder`,
      );
    return close;
  },
});

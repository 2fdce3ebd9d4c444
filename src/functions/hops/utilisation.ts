import { hopUtilisation } from "../../core/hops/utilisation";
import { describeFunction } from "../describe";
import { boilLimits, minutes, units } from "../vocabulary";
import { bitternessSources, boilsAt, kettleGravity, model } from "./additions";

export const hopsUtilisation = describeFunction({
  id: "HOPS.UTILISATION",
  summary: "Share of a hop's alpha acid that ends up as bitterness.",
  parameters: {
    minutes: minutes("Minutes that the hops boil; an empty cell counts as 0.", { limits: boilLimits }),
    gravity: kettleGravity,
    model,
    boilsAt,
    units,
  },
  result: { kind: "number", quantity: "fraction", doc: "Share of the alpha acid, 0.25 for a quarter." },
  equation:
    "tinseth: 1.65 × 0.000125^(SG − 1) × (1 − exp(−0.04 t)) / 4.15; rager: (0.1811 + 0.1386 tanh((t − 31.32) / 18.27)) / (1 + max(0, (SG − 1.050) / 0.2)); both with t = minutes × k1(boils_at) / k1(100 °C); kinetic: tinseth(60, SG) × I(minutes, boils_at) / I(60, 100 °C), I = k1 / (k2 − k1) × (exp(−k1 t) − exp(−k2 t)), k1 = 7.9e11 exp(−11858 / T), k2 = 4.1e12 exp(−12994 / T) per minute, T in K",
  sources: bitternessSources,
  examples: [
    { arguments: [30, 1.05], value: 0.177, tolerance: 0.0006, from: "Palmer, How to Brew, Table 7" },
    { arguments: [60, 1.08], value: 0.176, tolerance: 0.0006, from: "Palmer, How to Brew, Table 7" },
    { arguments: [33, 1.05, "rager"], value: 0.188, tolerance: 0.01, from: "Rager, Zymurgy 1990, table: 18.8 % for 31 to 35 minutes" },
    {
      arguments: [15, 1.05, "kinetic"],
      value: 0.0809,
      tolerance: 0.0002,
      from: "computed from the rates of Malowicki and Shellhammer: I = 0.1668 after 15 minutes, 0.4759 after 60; 0.2307 × 0.1668 / 0.4759",
    },
    {
      arguments: [60, 1.05, "kinetic", 203, "us"],
      value: 0.1756,
      tolerance: 0.0005,
      from: "computed: at 203 °F (95 °C), some 5000 ft up, a quarter less than the 0.2307 of 212 °F",
    },
  ],
  cautions: [
    "At 0 minutes tinseth and kinetic give nothing and rager 5 %: for hops that steep in hot wort ask GYLE.HOPS.STAND.",
    "The kinetic model is our own combination of measured rates with one fitted factor; below 90 °C the rates are carried on beyond what was measured.",
  ],
  compute: ({ minutes, gravity, model, boilsAt }) => hopUtilisation(minutes, gravity, model, boilsAt),
});

import { hopUtilisation } from "../../core/hops/utilisation";
import { describeFunction } from "../describe";
import { minutes } from "../vocabulary";
import { bitternessSources, kettleGravity, model } from "./additions";

export const hopsUtilisation = describeFunction({
  id: "HOPS.UTILISATION",
  summary: "Share of a hop's alpha acid that ends up as bitterness.",
  parameters: {
    minutes: minutes("Minutes that the hops boil; an empty cell counts as 0.", { limits: { atLeast: 0, atMost: 240 } }),
    gravity: kettleGravity,
    model,
  },
  result: { kind: "number", quantity: "fraction", doc: "Share of the alpha acid, 0.25 for a quarter." },
  equation: "tinseth: 1.65 × 0.000125^(SG − 1) × (1 − exp(−0.04 t)) / 4.15; rager: (0.1811 + 0.1386 tanh((t − 31.32) / 18.27)) / (1 + max(0, (SG − 1.050) / 0.2))",
  sources: bitternessSources.slice(0, 2),
  examples: [
    { arguments: [30, 1.05], value: 0.177, tolerance: 0.0006, from: "Palmer, How to Brew, Table 7" },
    { arguments: [60, 1.08], value: 0.176, tolerance: 0.0006, from: "Palmer, How to Brew, Table 7" },
    { arguments: [33, 1.05, "rager"], value: 0.188, tolerance: 0.01, from: "Rager, Zymurgy 1990, table: 18.8 % for 31 to 35 minutes" },
  ],
  cautions: ["At 0 minutes tinseth gives nothing and rager 5 %: hops that steep in hot wort lie somewhere between."],
  compute: ({ minutes, gravity, model }) => hopUtilisation(minutes, gravity, model),
});

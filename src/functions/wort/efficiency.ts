import { efficiencyPercent } from "../../core/wort/expected-gravity";
import { describeFunction } from "../describe";
import { gravity, units } from "../vocabulary";
import { fermentables, palmer, toFermentable, wholeVolume } from "./fermentables";

export const wortEfficiency = describeFunction({
  id: "WORT.EFFICIENCY",
  summary: "Efficiency that your brew day reached, from the malt bill and the gravity you measured.",
  parameters: { fermentables, volume: wholeVolume, gravity: gravity("Gravity measured in that volume."), units },
  result: { kind: "number", quantity: "percent", doc: "Share of the mashed and steeped grain's extract that reached the wort, %." },
  equation: "efficiency = [(SG − 1) × 1000 × volume − points of extract and sugar] / points of the grain at full yield",
  sources: [palmer],
  examples: [
    { arguments: [[[5, 80, "mash"]], 20, 1.054], value: 70.03, tolerance: 0.01, from: "worked by hand: 54 × 20 / (5 × 0.8 × 385.56) = 0.7003" },
    { arguments: [[[10, 80, "mash"], [1, 100, "sugar"]], 5, 1.06, "us"], value: 68.67, tolerance: 0.01, from: "worked by hand: (60 × 5 − 46.2) / (10 × 0.8 × 46.2) = 0.6867" },
  ],
  cautions: ["Stir well and measure cold: layered or hot wort makes the figure wander by several per cent."],
  compute: ({ fermentables: rows, volume, gravity: measured }) => efficiencyPercent(rows.map(toFermentable), volume, measured),
});

import { bitternessPerPoint } from "../../core/hops/swap";
import { describeFunction } from "../describe";
import { gravity, number } from "../vocabulary";

export const hopsBalance = describeFunction({
  id: "HOPS.BALANCE",
  summary: "Bitterness against strength of the wort: whether a beer leans to hops or to malt.",
  parameters: {
    ibu: number("bitterness", { doc: "Bitterness, as GYLE.HOPS.IBU gives it.", limits: { above: 0, atMost: 500 }, typical: 30 }),
    originalGravity: gravity("Specific gravity of the wort when the yeast goes in.", { limits: { atLeast: 1.001, atMost: 1.2 } }),
  },
  result: { kind: "number", quantity: "number", doc: "IBU for each point of gravity: about 0.3 is malty, 0.5 even, 0.8 and more hoppy." },
  equation: "IBU / (1000 × (OG − 1))",
  sources: [{ cite: "R. Daniels, Designing Great Beers, 1996", where: "bitterness units over gravity units; from memory" }],
  examples: [
    { arguments: [30, 1.05], value: 0.6, tolerance: 1e-9, from: "worked by hand: 30 / 50" },
    { arguments: [20, 1.08], value: 0.25, tolerance: 1e-9, from: "worked by hand: 20 / 80" },
  ],
  compute: ({ ibu, originalGravity }) => bitternessPerPoint(ibu, originalGravity),
});

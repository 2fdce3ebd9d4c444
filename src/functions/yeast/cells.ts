import { cellsToPitch } from "../../core/yeast/cells";
import { describeFunction } from "../describe";
import { number, optional, units, volume } from "../vocabulary";
import { originalGravity } from "./wort";

export const yeastCells = describeFunction({
  id: "YEAST.CELLS",
  summary: "How many living yeast cells to pitch into a wort.",
  parameters: {
    volume: volume("Wort in the fermenter."),
    gravity: originalGravity,
    rate: optional(
      number("pitchRate", {
        doc: "Million cells for each mL and °P: 0.75 when left out, for ale; 1.5 for lager; about 1 for strong ale.",
        limits: { above: 0, atMost: 10 },
        typical: 0.75,
        hint: (typed) => (typed >= 1e5 ? `it is in millions: write ${typed / 1e6}` : undefined),
      }),
      0.75,
    ),
    units,
  },
  result: { kind: "number", quantity: "cells", doc: "Living cells, billion (10⁹)." },
  equation: "cells (10⁹) = rate × volume (L) × extract (°P)",
  sources: [
    {
      cite: "G. J. Fix and L. A. Fix, An Analysis of Brewing Techniques, 1997",
      where: "0.75 million per mL and °P for ale, 1.5 for lager, with a worked example",
    },
  ],
  examples: [
    {
      arguments: [20, 1.04837],
      value: 180,
      tolerance: 0.5,
      from: "Fix and Fix: 20 L of 12 °P ale; 1.04837 is 12 °Bx in NBS Circular 440, Table 114",
    },
    { arguments: [20, 1.04837, 1.5], value: 360, tolerance: 0.5, from: "Fix and Fix: the same wort, lager" },
    { arguments: [5, 1.05, null, "us"], value: 175.8, tolerance: 0.1, from: "worked by hand: 0.75 × 18.927 L × 12.386 °P" },
  ],
  cautions: [
    "A target, not a measurement: nobody counts cells at home. Rather too many than too few, and pitch when wort and yeast are about as warm as each other.",
  ],
  compute: ({ volume, gravity, rate }) => cellsToPitch(volume, gravity, rate),
});

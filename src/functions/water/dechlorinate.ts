import { metabisulfiteKinds, metabisulfiteMg } from "../../core/water/dechlorinate";
import { describeFunction } from "../describe";
import { choice, number, optional, units, volume } from "../vocabulary";

export const waterDechlorinate = describeFunction({
  id: "WATER.DECHLORINATE",
  summary: "Metabisulfite that takes chlorine or chloramine out of tap water.",
  parameters: {
    volume: volume("Water to treat."),
    chlorine: number("concentration", {
      doc: "Chlorine, free and bound together, as Cl2: ask your waterworks, often 0.5 to 4.",
      limits: { above: 0, atMost: 20 },
      typical: 1,
    }),
    compound: optional(choice("The metabisulfite that you have.", metabisulfiteKinds), "potassium"),
    units,
  },
  result: {
    kind: "number",
    quantity: "milligrams",
    doc: "Metabisulfite in milligrams, also in US units, with a quarter more than the bare sum.",
  },
  equation: "mg = 1.25 × volume (L) × chlorine × 1.568 (potassium) or 1.341 (sodium)",
  sources: [{ cite: "stoichiometry with atomic weights", where: "S2O5 + 2 Cl2 + 3 H2O → 2 SO4 + 4 Cl + 6 H" }],
  examples: [
    { arguments: [20, 3], value: 117.6, tolerance: 0.2, from: "worked by hand: 1.25 × 20 × 3 × 1.568" },
    { arguments: [5, 1, "sodium", "us"], value: 31.72, tolerance: 0.05, from: "worked by hand: 1.25 × 18.927 × 1.341" },
  ],
  cautions: [
    "Sulfite can set off asthma: do not breathe the powder, and tell people who drink the beer that it was used.",
    "Dissolve it in a little water, stir it in and wait some minutes. Never together with an acid cleaner or bleach.",
  ],
  compute: ({ volume, chlorine, compound }) => metabisulfiteMg(volume, chlorine, compound),
});

import { gravityFromPlato } from "../../core/wort/plato";
import { describeFunction } from "../describe";
import { number } from "../vocabulary";
import { coveredPlato, sugarTable } from "./sugar-tables";

export const wortSg = describeFunction({
  id: "WORT.SG",
  summary: "Specific gravity from degrees Plato (or from °Brix, which for wort is taken as the same).",
  parameters: {
    plato: number("plato", {
      doc: "Extract of the wort; 12 is an everyday beer, below 0 a very dry one. 0 counts as not filled in yet.",
      limits: { atLeast: -5.5, atMost: 45 },
      covered: coveredPlato,
      typical: 12,
      hint: (typed) => (typed > 900 && typed < 1200 ? "it looks like a specific gravity: no need to convert it" : undefined),
    }),
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C." },
  equation: "the x that gives P = 258.60 x − 226.12 x² + 175.45 x³; SG = 1 + x",
  sources: [sugarTable],
  examples: [
    { arguments: [12], value: 1.04837, tolerance: 3e-5, from: "NBS Circular 440, Table 114, 12 °Bx" },
    { arguments: [20], value: 1.08297, tolerance: 3e-5, from: "NBS Circular 440, Table 114, 20 °Bx" },
  ],
  compute: ({ plato }) => gravityFromPlato(plato),
});

import { viabilityPercent, yeastKinds } from "../../core/yeast/viability";
import { describeFunction } from "../describe";
import { choice, number, optional } from "../vocabulary";

export const yeastViability = describeFunction({
  id: "YEAST.VIABILITY",
  summary: "Share of the yeast in a pack that is still alive.",
  parameters: {
    days: number("days", {
      doc: "Days since the pack was made; an empty cell counts as 0.",
      limits: { atLeast: 0, atMost: 1100 },
      typical: 60,
      blank: "zero",
    }),
    kind: optional(
      choice("Kept as usual: liquid in the refrigerator, dry at room temperature.", yeastKinds, { dried: "dry", wet: "liquid" }),
      "liquid",
    ),
  },
  result: { kind: "number", quantity: "percent", doc: "Living cells, % of those in the fresh pack." },
  equation: "liquid: 100 × 0.80^(days / 30); dry: 100 × 0.98^(days / 30)",
  sources: [{ cite: "common practice", where: "a fifth of liquid yeast in a month, a fifth of dry yeast in a year; from memory" }],
  examples: [
    { arguments: [60], value: 64, tolerance: 1e-9, from: "worked by hand: 0.80 × 0.80" },
    { arguments: [365, "dry"], value: 80, tolerance: 3, from: "common practice: about a fifth lost in a year at room temperature" },
  ],
  cautions: [
    "A rule of thumb: yeast that got warm on the way is worse, and the date on the pack comes first. A small trial in a glass of wort shows whether it lives.",
  ],
  compute: ({ days, kind }) => viabilityPercent(days, kind),
});

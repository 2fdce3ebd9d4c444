import { packetAlphaPercent } from "../../core/hops/alpha";
import { massForSameAlpha } from "../../core/hops/swap";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { number, percent } from "../vocabulary";

export const packetAlpha = (doc: string) =>
  percent(doc, {
    limits: { above: packetAlphaPercent.least, atMost: 30 },
    typical: 5.5,
    hint: (typed) =>
      typed <= packetAlphaPercent.least ? percentHint(typed) : typed <= 300 ? `alpha acid of ${typed}? write ${typed / 10}` : undefined,
  });

export const hopsSwap = describeFunction({
  id: "HOPS.SWAP",
  summary: "How much of another hop gives the same bitterness.",
  parameters: {
    mass: number("number", {
      doc: "Mass of the hop in the recipe, g or oz: the answer is in the same unit.",
      limits: { above: 0, atMost: 50000 },
      typical: 30,
    }),
    alpha: packetAlpha("Alpha acid of the hop in the recipe, %."),
    newAlpha: packetAlpha("Alpha acid printed on the packet that you have, %."),
  },
  result: { kind: "number", quantity: "number", doc: "Mass of the new hop, in the unit of mass." },
  equation: "new mass = mass × alpha / new_alpha",
  sources: [{ cite: "common practice", where: "the same alpha acid, boiled as long, gives the same bitterness" }],
  examples: [
    { arguments: [30, 8, 6], value: 40, tolerance: 1e-9, from: "worked by hand: 30 × 8 / 6" },
    { arguments: [1, 5, 10], value: 0.5, tolerance: 1e-9, from: "worked by hand, in ounces: 1 × 5 / 10" },
  ],
  cautions: ["For hops that boil for bitterness. Late hops are swapped for their aroma: keep the mass and choose a similar kind."],
  compute: ({ mass, alpha, newAlpha }) => massForSameAlpha(mass, alpha, newAlpha),
});

import { alcoholByVolume } from "../../core/beer/alcohol";
import { blendOf } from "../../core/beer/blend";
import { BrewingError } from "../../core/brewing-error";
import { describeFunction } from "../describe";
import { messages } from "../messages";
import { gravities, list } from "../vocabulary";
import { sugarTable } from "../wort/sugar-tables";
import { balling } from "./gravities";

export const beerBlend = describeFunction({
  id: "BEER.BLEND",
  summary: "What several finished beers are when they are poured together.",
  parameters: {
    volumes: list("number", "Volumes, all in the same unit.", { limits: { above: 0, atMost: 100000 }, typical: 10 }),
    originalGravities: gravities("Their original gravities, in the same order."),
    finalGravities: gravities("Their gravities now, in the same order."),
  },
  result: {
    kind: "grid",
    doc: "Three rows: original gravity and gravity now of the blend, and alcohol in % by volume.",
    columns: ["what", "value"],
  },
  equation:
    "RE = Σ V FG RE / Σ V FG; OE the same with V FG (1 + 0.010665 ABW), the mass of each wort; AE from both by Balling; alcohol as GYLE.BEER.ABV",
  sources: [{ cite: "mass balance", where: "extract and alcohol add up" }, sugarTable, balling],
  examples: [
    {
      arguments: [
        [[10], [10]],
        [[1.04837], [1.08297]],
        [[1.01], [1.02]],
      ],
      value: [
        ["original gravity", 1.0655],
        ["gravity now", 1.015],
        ["alcohol", 6.8],
      ],
      tolerance: 0.02,
      from: "worked by hand: 12 and 20 °Bx of NBS Table 114, 5.08 % and 8.52 % by the equation of BEER.ABV; in the middle",
    },
    {
      arguments: [[[19, 1]], [[1.05, 1.05]], [[1.01, 1.01]]],
      value: [
        ["original gravity", 1.05],
        ["gravity now", 1.01],
        ["alcohol", 5.31],
      ],
      tolerance: 0.01,
      from: "worked by hand: the same beer twice",
    },
  ],
  cautions: ["Yeast of one beer may ferment what the other left: let a blend stand, and bottle only when two readings a day apart agree."],
  compute: ({ volumes, originalGravities, finalGravities }) => {
    if (volumes.length !== originalGravities.length)
      throw new BrewingError("impossible", messages.sameLength("volumes", "original_gravities"));
    if (volumes.length !== finalGravities.length) throw new BrewingError("impossible", messages.sameLength("volumes", "final_gravities"));
    const beers = volumes.flatMap((volume, index) => {
      const [originalGravity = null, finalGravity = null] = [originalGravities[index], finalGravities[index]];
      if (volume === null && originalGravity === null && finalGravity === null) return [];
      if (volume === null || originalGravity === null || finalGravity === null)
        throw new BrewingError("impossible", `volumes row ${index + 1}: volume and both gravities must be filled in, or none of them`);
      return [{ volume, originalGravity, finalGravity }];
    });
    const blend = blendOf(beers);
    return [
      ["original gravity", blend.originalGravity],
      ["gravity now", blend.finalGravity],
      ["alcohol", alcoholByVolume(blend.originalGravity, blend.finalGravity)],
    ];
  },
});

import { BrewingError } from "../../core/brewing-error";
import { mixedGravity } from "../../core/wort/mix";
import { describeFunction } from "../describe";
import { messages } from "../messages";
import { gravities, list } from "../vocabulary";
import { sugarTable } from "./sugar-tables";

export const wortMix = describeFunction({
  id: "WORT.MIX",
  summary: "Gravity of worts poured together.",
  parameters: {
    volumes: list("number", "Volumes, cold, all in the same unit.", { limits: { above: 0, atMost: 100000 }, typical: 10 }),
    gravities: gravities("Their gravities, in the same order; water is 1.000."),
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C of the mixture." },
  equation: "P = Σ V SG P / Σ V SG, then SG from P: masses and sugar add up",
  sources: [{ cite: "mass balance", where: "sugar before = sugar after" }, sugarTable],
  examples: [
    {
      arguments: [
        [[21.659], [20]],
        [[1], [1.08297]],
      ],
      value: 1.04003,
      tolerance: 3e-5,
      from: "worked by hand from NBS Table 114: equal masses of water and 20 °Bx give 10 °Bx",
    },
    {
      arguments: [[[20, 5]], [[1.06, 1]]],
      value: 1.04807,
      tolerance: 2e-5,
      from: "computed from the equation; the rule of points gives 1.048",
    },
  ],
  compute: ({ volumes, gravities: readings }) => {
    if (volumes.length !== readings.length) throw new BrewingError("impossible", messages.sameLength("volumes", "gravities"));
    const worts = volumes.flatMap((volume, index) => {
      const gravity = readings[index] ?? null;
      if (volume === null && gravity === null) return [];
      if (volume === null || gravity === null) {
        throw new BrewingError(
          "impossible",
          volume === null
            ? `volumes row ${index + 1} is not filled in, but gravities row ${index + 1} is`
            : `gravities row ${index + 1} is not filled in, but volumes row ${index + 1} is (water is 1.000)`,
        );
      }
      return [{ volume, gravity }];
    });
    return mixedGravity(worts);
  },
});

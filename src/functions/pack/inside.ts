import { BrewingError } from "../../core/brewing-error";
import { describeFunction } from "../describe";
import { showQuantity } from "../quantities";
import { checkEquation, checkParameters, judged } from "./check-parameters";
import { checkSources } from "./check-sources";
import { bottleWords } from "./check-words";
import { solubilitySources } from "./solubility-source";

export const packInside = describeFunction({
  id: "PACK.INSIDE",
  summary:
    "The pressure in a closed bottle at its warmest, or on a keg: the figure that GYLE.PACK.CHECK judges, where the kind may bear it.",
  parameters: checkParameters,
  result: { kind: "number", quantity: "pressure", doc: "Gauge pressure; none where GYLE.PACK.CHECK says over." },
  equation: checkEquation,
  sources: [...checkSources, ...solubilitySources],
  examples: [
    {
      arguments: [2.4, 20, "ordinary"],
      value: 2.57,
      tolerance: 0.08,
      from: "worked by hand from other constants (IAPWS G7-04, air with its oxygen, beer 5 % below water): tests/core/pack/closed-bottle.test.ts",
    },
    { arguments: [2.4, 68, "ordinary", null, null, "us"], value: 37.3, tolerance: 1.2, from: "the same in psi" },
  ],
  cautions: ["Ask GYLE.PACK.CHECK for the verdict, and what it rests on: no figure makes a bottle safe."],
  compute: (asked, { units }) => {
    const { verdict, gaugeBar, volumes, limit } = judged(asked);
    if (verdict !== "over") return gaugeBar;
    const most = `${limit.volumes === undefined ? "" : `${limit.volumes} volumes and `}${showQuantity("pressure", limit.gaugeBar, units)}`;
    throw new BrewingError(
      "impossible",
      `co2 comes to ${volumes.toFixed(2)} volumes; at ${showQuantity("temperature", asked.temperature, units)} that is more than ${bottleWords[asked.bottle]} bears, ${most}: ask GYLE.PACK.CHECK what to do`,
    );
  },
});

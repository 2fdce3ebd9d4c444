import { describeFunction } from "../describe";
import { checkEquation, checkParameters, judged, pointsToFall } from "./check-parameters";
import { checkSources } from "./check-sources";
import { checkWords } from "./check-words";
import { solubilitySources } from "./solubility-source";

export const packCheck = describeFunction({
  id: "PACK.CHECK",
  summary: "Holds the pressure that your bottles will see against what their kind may bear.",
  parameters: checkParameters,
  result: { kind: "text", doc: "within, close or over, then the reasons. close begins at nine tenths of a limit." },
  equation: checkEquation,
  sources: [...checkSources, ...solubilitySources],
  examples: [
    {
      arguments: [2.4, 25, "ordinary", 1.012, 1.012],
      value:
        "within: 2.4 volumes at 25 °C make 3.08 bar in an ordinary beer bottle; its working limit is 3 volumes and 3.5 bar (common practice, from memory). Holds only for sound bottles of that kind, evenly primed.",
      from: "worked by hand, tests/core/pack/closed-bottle.test.ts: carbon dioxide 3.24 bar, air 0.83, vapour 0.03, less 1.01",
    },
    {
      arguments: [2.4, 77, "ordinary", 1.016, 1.012, "us"],
      value:
        "over: 4.4 volumes at 77 °F make 84.7 psi in an ordinary beer bottle; its working limit is 3 volumes and 50.8 psi (common practice, from memory). Of this 2 volumes come from fermentation still to be done. Do not bottle: wait until two readings a day apart agree at the gravity expected. Bottles already filled: do not open or move them; keep people away and cool the room.",
      from: "worked by hand: four points still to fall add 2.0 volumes; the pressure as above",
    },
  ],
  cautions: [
    "No verdict makes a bottle safe: glass that was knocked, scratched or meant to be used once breaks far below these limits. Wear eye protection when you handle full bottles.",
    "The maker's own figure for the bottle comes first. Never fill window-thin, twist-off or one-way glass.",
    "Strong or sweet beer takes up less gas than the ordinary one calculated here: some 5 % more pressure at 10 % alcohol.",
  ],
  compute: (asked, context) => checkWords(asked.bottle, asked.temperature, judged(asked), pointsToFall(asked), context),
});

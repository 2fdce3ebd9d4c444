import { describeFunction } from "../describe";
import { bitternessOfEach, bitternessParameters, bitternessSources } from "./additions";

export const hopsIbu = describeFunction({
  id: "HOPS.IBU",
  summary: "Bitterness of the beer from all hop additions in the boil.",
  parameters: bitternessParameters,
  result: { kind: "number", quantity: "bitterness", doc: "IBU: milligrams of iso-alpha acid in a litre." },
  equation: "IBU = Σ mass (g) × 1000 × alpha × utilisation(minutes × k1(boils_at) / k1(100 °C), gravity) / volume (L); kinetic has boils_at in its rates, see GYLE.HOPS.UTILISATION",
  sources: bitternessSources,
  examples: [
    { arguments: [[[1.5, 6.4, 60]], 5, 1.08, null, null, "us"], value: 25, tolerance: 0.6, from: "Palmer, How to Brew, ch. 5: 1.5 oz of 6.4 % for 60 minutes" },
    { arguments: [[[1, 4.6, 15]], 5, 1.08, "tinseth", null, "us"], value: 6, tolerance: 0.4, from: "Palmer, How to Brew, ch. 5: 1 oz of 4.6 % for 15 minutes" },
    { arguments: [[["Hop", "g", "alpha", "min"], ["Perle", 30, 8, 60], ["", "", "", ""]], 20, 1.05], value: 27.68, tolerance: 0.01, from: "worked by hand: 30 × 1000 × 0.08 × 0.23066 / 20" },
  ],
  cautions: [
    "A model, good to about ±20 %: hops age, kettles differ. Compare your own beers with it, and do not expect more than about 100 IBU in real beer.",
    "Hops make the kettle foam up: stand by, turn the heat down, add them little by little.",
  ],
  compute: ({ additions, volume, gravity, model, boilsAt }) =>
    bitternessOfEach(additions, { volumeL: volume, gravity, model, boilsAtC: boilsAt }).reduce((sum, { ibu }) => sum + ibu, 0),
});

import { describeFunction } from "../describe";
import { afterBoilCautions, bitternessEquation, bitternessOfEach, bitternessParameters, bitternessSources, formSource } from "./additions";

export const hopsIbu = describeFunction({
  id: "HOPS.IBU",
  summary: "Bitterness of the beer from all hops: in the boil, and in the hot wort after it.",
  parameters: bitternessParameters,
  result: { kind: "number", quantity: "bitterness", doc: "IBU: milligrams of iso-alpha acid in a litre." },
  equation: `Σ over the additions: ${bitternessEquation}`,
  sources: [...bitternessSources, formSource],
  examples: [
    {
      arguments: [[[1.5, 6.4, 60]], 5, 1.08, null, null, "us"],
      value: 25,
      tolerance: 0.6,
      from: "Palmer, How to Brew, ch. 5: 1.5 oz of 6.4 % for 60 minutes",
    },
    {
      arguments: [[[1, 4.6, 15]], 5, 1.08, "tinseth", null, "us"],
      value: 6,
      tolerance: 0.4,
      from: "Palmer, How to Brew, ch. 5: 1 oz of 4.6 % for 15 minutes",
    },
    {
      arguments: [
        [
          ["Hop", "g", "alpha", "min"],
          ["Perle", 30, 8, 60],
          ["", "", "", ""],
        ],
        20,
        1.05,
      ],
      value: 27.68,
      tolerance: 0.01,
      from: "worked by hand: 30 × 1000 × 0.08 × 0.23066 / 20",
    },
    {
      arguments: [
        [
          [20, 5, "dry"],
          [30, 8, "first wort"],
          [30, 8, 0],
        ],
        20,
        1.05,
        null,
        null,
        null,
        60,
      ],
      value: 27.68,
      tolerance: 0.01,
      from: "worked by hand: first wort boils the whole hour, as Perle above; dry hops add nothing, nor those at flame-out while nothing is said of the chilling",
    },
    {
      arguments: [
        [
          ["Perle", 30, 8, 60, "pellets"],
          ["Perle", 30, 8, 60, ""],
        ],
        20,
        1.05,
      ],
      value: 58.13,
      tolerance: 0.02,
      from: "worked by hand: 27.68 as above, and a tenth more for the pellets",
    },
    {
      arguments: [
        [
          [50, 10, "stand"],
          [30, 8, 60],
        ],
        20,
        1.05,
        "kinetic",
        null,
        null,
        60,
        90,
        60,
      ],
      value: 64.21,
      tolerance: 0.02,
      from: "computed by Runge and Kutta's method from the rates of Malowicki and Shellhammer: iso-alpha acid 0.25852 after 60 minutes at 90 °C, 0.56546 after 60 at 100 °C and 60 at 90 °C; (250 × 0.25852 + 120 × 0.56546) mg/L × 0.23066 / 0.47589",
    },
  ],
  cautions: [
    "A model, good to about ±20 %: hops age, kettles differ. Compare your own beers with it, and do not expect more than about 100 IBU in real beer.",
    "Hops make a boiling kettle foam up: stand by, turn the heat down, add them little by little.",
    ...afterBoilCautions,
  ],
  compute: (values) => bitternessOfEach(values)?.reduce((sum, { ibu }) => sum + ibu, 0) ?? "",
});

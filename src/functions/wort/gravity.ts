import { expectedGravity } from "../../core/wort/expected-gravity";
import { describeFunction } from "../describe";
import { units } from "../vocabulary";
import { brewhouseEfficiency, fermentables, palmer, toFermentable, wholeVolume } from "./fermentables";
import { sugarSolutions } from "./sugar-tables";

export const wortGravity = describeFunction({
  id: "WORT.GRAVITY",
  summary: "Gravity to expect from a malt bill in a volume of wort.",
  parameters: {
    fermentables,
    volume: wholeVolume,
    efficiency: brewhouseEfficiency,
    units,
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C." },
  equation:
    "extract in a litre = Σ mass × yield × efficiency / volume; SG = density of a sugar solution with so much in it / density of water, both at 20 °C (about 1 + 0.3856 × kg/L; 46.2 points·gal/lb)",
  sources: [sugarSolutions, palmer],
  examples: [
    {
      arguments: [[[5.55, 77.922, "extract"]], 5, null, "us"],
      value: 1.04,
      tolerance: 0.0001,
      from: "Palmer, How to Brew, ch. 3-4: 5.55 lb at 36 points in 5 gal",
    },
    {
      arguments: [
        [
          [4, 80, "mash"],
          [0.3, 74, "steep"],
          [0.5, 100, "sugar"],
        ],
        20,
        75,
      ],
      value: 1.059,
      tolerance: 0.0002,
      from: "worked by hand from a printed table of sucrose solutions: 2.4 + 0.1665 + 0.5 = 3.0665 kg in 20 L are 153.3 g/L, 14.5 % by mass: 1.0571 kg/L over 0.9982",
    },
  ],
  cautions: [
    "Steeping alone gives less than mashing: enter the steeping yield, about half.",
    "Malts vary by some per cent of their yield; the gravity that counts is the one you measure.",
  ],
  compute: ({ fermentables: rows, volume, efficiency }) => expectedGravity(rows.map(toFermentable), volume, efficiency),
});

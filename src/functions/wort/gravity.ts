import { expectedGravity } from "../../core/wort/expected-gravity";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { optional, percent, units } from "../vocabulary";
import { fermentables, palmer, toFermentable, wholeVolume } from "./fermentables";

export const wortGravity = describeFunction({
  id: "WORT.GRAVITY",
  summary: "Gravity to expect from a malt bill in a volume of wort.",
  parameters: {
    fermentables,
    volume: wholeVolume,
    efficiency: optional(percent("Share of the grain's extract that your brewhouse gets, %; 70 when left out. Extract and sugar always count whole.", { limits: { above: 1, atMost: 100 }, typical: 70, hint: percentHint }), 70),
    units,
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C." },
  equation: "SG = 1 + Σ mass × yield × 385.56 L°/kg (46.2 points·gal/lb) × efficiency / volume / 1000",
  sources: [palmer],
  examples: [
    { arguments: [[[5.55, 77.922, "extract"]], 5, null, "us"], value: 1.04, tolerance: 0.0001, from: "Palmer, How to Brew, ch. 3-4: 5.55 lb at 36 points in 5 gal" },
    {
      arguments: [[[4, 80, "mash"], [0.3, 74, "steep"], [0.5, 100, "sugar"]], 20, 75],
      value: 1.05912,
      tolerance: 1e-5,
      from: "worked by hand: (925.34 + 64.20 + 192.78) / 20 = 59.12 points",
    },
  ],
  cautions: [
    "Steeping alone gives less than mashing: enter the steeping yield, about half.",
    "Adding points is right within 1.5 % of them; the gravity that counts is the one you measure.",
  ],
  compute: ({ fermentables: rows, volume, efficiency }) => expectedGravity(rows.map(toFermentable), volume, efficiency),
});

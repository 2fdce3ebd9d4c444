import { pointsFromYieldPercent } from "../../core/wort/extract-potential";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { percent, units } from "../vocabulary";
import { palmer } from "./fermentables";

export const wortPoints = describeFunction({
  id: "WORT.POINTS",
  summary: "A malt's points from its extract yield in per cent, as maltsters' sheets print it.",
  parameters: {
    yield: percent("Extract, % of the mass as it is.", { limits: { above: 1, atMost: 100 }, typical: 80, hint: percentHint }),
    units,
  },
  result: { kind: "number", quantity: "points", doc: "Litre-degrees per kilogram, or points per pound per US gallon." },
  equation: "points = yield / 100 × 385.56 L°/kg, or × 46.2 points·gal/lb",
  sources: [palmer],
  examples: [
    { arguments: [60, "us"], value: 28, tolerance: 0.8, from: "Palmer, How to Brew, Table 9, chocolate malt (the table rounds)" },
    { arguments: [80], value: 308.45, tolerance: 0.01, from: "worked by hand: 0.8 × 385.56" },
  ],
  cautions: ["A sheet that gives extract on dry matter: take off the moisture first, 80 % dry at 4 % moisture is 76.8 % as it is."],
  compute: (values) => pointsFromYieldPercent(values.yield),
});

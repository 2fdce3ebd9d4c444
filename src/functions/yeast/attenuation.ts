import { apparentAttenuation, realAttenuation } from "../../core/yeast/attenuation";
import { describeFunction } from "../describe";
import { choice, gravity, optional } from "../vocabulary";
import { originalGravity } from "./wort";

export const yeastAttenuation = describeFunction({
  id: "YEAST.ATTENUATION",
  summary: "How much of the sugar the yeast has used up so far.",
  parameters: {
    originalGravity,
    gravity: gravity("Specific gravity of the beer now.", { typical: 1.012 }),
    kind: optional(
      choice("apparent is what the hydrometer shows and makers of yeast quote; real allows for the alcohol.", ["apparent", "real"]),
      "apparent",
    ),
  },
  result: { kind: "number", quantity: "percent", doc: "Share of the extract, %." },
  equation: "apparent: 100 (OE − AE) / OE; real: 100 (OE − RE) / OE / (1 − 0.005161 RE), with RE as in GYLE.BEER.EXTRACT",
  sources: [
    {
      cite: "A. J. Cutaia, A.-J. Reid and R. A. Speers, J. Inst. Brew. 115, 2009",
      where: "means of original, apparent and real extract of five sets of beers",
    },
    { cite: "ASBC Methods of Analysis, Beer-6", where: "real degree of fermentation; the constant from memory" },
  ],
  examples: [
    {
      arguments: [1.045606, 1.007826],
      value: 82.28,
      tolerance: 0.01,
      from: "Cutaia, Reid and Speers 2009: OE 11.34, AE 2.01 °P in the mean",
    },
    {
      arguments: [1.045606, 1.007826, "real"],
      value: 67.82,
      tolerance: 0.4,
      from: "Cutaia, Reid and Speers 2009: OE 11.34, RE 3.80 °P in the mean",
    },
    { arguments: [1.05, 1.0125], value: 74.19, tolerance: 0.01, from: "worked by hand: (12.386 − 3.197) / 12.386" },
  ],
  cautions: ["Above 100 % (apparent) the beer has ended below 1.000: possible with much sugar or a very hungry yeast."],
  compute: ({ originalGravity, gravity, kind }) => (kind === "real" ? realAttenuation : apparentAttenuation)(originalGravity, gravity),
});

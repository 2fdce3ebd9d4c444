import { alcoholByVolume, alcoholByVolumeSimple } from "../../core/beer/alcohol";
import { describeFunction } from "../describe";
import { choice, gravity, optional } from "../vocabulary";

export const beerAbv = describeFunction({
  id: "BEER.ABV",
  summary: "Alcohol by volume of a beer, from its gravity before and after fermentation.",
  parameters: {
    originalGravity: gravity("Specific gravity of the wort when the yeast went in."),
    finalGravity: gravity("Specific gravity of the beer now.", { typical: 1.01 }),
    method: optional(
      choice("extract goes by the real extract and holds for strong beer too; simple is 131.25 times the gravity lost; kit is 131 times.", ["extract", "simple", "kit"]),
      "extract",
    ),
  },
  result: { kind: "number", quantity: "percent", doc: "Alcohol, % by volume at 20 °C." },
  equation: "RE = 0.1808 OE + 0.8192 AE; ABW = (OE − RE) / (2.0665 − 0.010665 OE); ABV = ABW × FG / 0.791",
  sources: [
    { cite: "C. J. N. Balling, Die Gährungschemie, 1865", where: "mass balance 2.0665 g extract → 1 g alcohol, as printed in 19th-century tables" },
    { cite: "OIML R 22, International alcoholometric tables, 1975", where: "density of ethanol at 20 °C" },
  ],
  examples: [
    { arguments: [1.05, 1.01], value: 5.31, tolerance: 0.01, from: "computed from the equation; no published figure for this pair" },
    { arguments: [1.05, 1.01, "kit"], value: 5.24, tolerance: 1e-9, from: "worked by hand: 131 × 0.040" },
  ],
  cautions: ["Homebrew readings are good to about ±0.3 %; never use the figure for duty, labels or driving."],
  compute: ({ originalGravity, finalGravity, method }) =>
    method === "extract" ? alcoholByVolume(originalGravity, finalGravity) : alcoholByVolumeSimple(originalGravity, finalGravity, method === "kit" ? 131 : 131.25),
});

import { alcoholByVolume, alcoholByVolumeSimple, alcoholPerGravity } from "../../core/beer/alcohol";
import { primedAlcoholPercent } from "../../core/beer/primed";
import { describeFunction } from "../describe";
import { choice, optional } from "../vocabulary";
import { balling, cutaia, finalGravity, originalGravity } from "./gravities";
import { primed } from "./primed";

export const alcoholMethod = optional(
  choice("extract goes by the real extract and holds for strong beer too; simple is 131.25 times the gravity lost; kit is 131 times.", [
    "extract",
    "simple",
    "kit",
  ]),
  "extract",
);

export const beerAbv = describeFunction({
  id: "BEER.ABV",
  summary: "Alcohol by volume of a beer, from its gravity before and after fermentation.",
  parameters: { originalGravity, finalGravity, method: alcoholMethod, primed },
  result: { kind: "number", quantity: "percent", doc: "Alcohol, % by volume at 20 °C." },
  equation:
    "extract: RE = 0.1808 OE + 0.8192 AE, ABW = (OE − RE) / (2.0665 − 0.010665 OE), ABV = ABW × FG / 0.791; simple: ABV = 131.25 (OG − FG); kit: ABV = 131 (OG − FG); each volume of gas from priming adds 0.262",
  sources: [
    balling,
    cutaia,
    { cite: "OIML R 22, International alcoholometric tables, 1975", where: "density of ethanol at 20 °C" },
    { cite: "common practice", where: "131.25 and 131 for each point lost; from memory" },
  ],
  examples: [
    { arguments: [1.05, 1.01], value: 5.31, tolerance: 0.01, from: "computed from the equation; no published figure for this pair" },
    { arguments: [1.05, 1.01, "kit"], value: 5.24, tolerance: 1e-9, from: "worked by hand: 131 × 0.040" },
    {
      arguments: [1.05, 1.01, "kit", 1.6],
      value: 5.659,
      tolerance: 0.002,
      from: "worked by hand: 5.24, and 1.6 × 1.977 g of gas with 46.07/44.01 as much alcohol, 3.311 g or 4.195 mL in a litre",
    },
  ],
  cautions: ["Homebrew readings are good to about ±0.3 %; never use the figure for duty, labels or driving."],
  compute: (values) =>
    primedAlcoholPercent(values.primed) +
    (values.method === "extract"
      ? alcoholByVolume(values.originalGravity, values.finalGravity)
      : alcoholByVolumeSimple(values.originalGravity, values.finalGravity, alcoholPerGravity[values.method])),
});

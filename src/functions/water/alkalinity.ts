import { residualAlkalinityMgPerL } from "../../core/water/alkalinity";
import { describeFunction } from "../describe";
import { number } from "../vocabulary";

const dissolved = (doc: string, typical: number, blank: "zero" | "waits" = "zero") =>
  number("concentration", { doc, limits: { atLeast: 0, atMost: 2000 }, typical, blank });

export const waterAlkalinity = describeFunction({
  id: "WATER.ALKALINITY",
  summary: "Residual alkalinity of a water: how strongly it raises the pH of a mash.",
  parameters: {
    alkalinity: dissolved("Alkalinity as CaCO3, as in a water report; 0 for distilled water.", 120, "waits"),
    calcium: dissolved("Calcium (Ca), as in a water report.", 60),
    magnesium: dissolved("Magnesium (Mg), as in a water report.", 10),
  },
  result: {
    kind: "number",
    quantity: "concentration",
    doc: "Residual alkalinity as CaCO3, mg/L; below 0 lowers the pH. 17.85 mg/L are 1 °dH.",
  },
  equation: "RA = alkalinity − Ca / 1.401 − Mg / 1.700",
  sources: [
    { cite: "P. Kolbach, Monatsschrift für Brauerei, 1951 to 1953", where: "alkalinity − Ca / 3.5 − Mg / 7, in equivalents, as quoted" },
  ],
  examples: [
    { arguments: [295, 76, 18], value: 230.2, tolerance: 0.9, from: "worked example after Kolbach: 12.9 °dH" },
    { arguments: [100, 140, 0], value: 0.1, tolerance: 0.1, from: "worked by hand: 100 − 140 / 1.4015" },
  ],
  cautions: ["For mashing grain. With malt extract the maker has seen to it; add no salts for this."],
  compute: ({ alkalinity, calcium, magnesium }) => residualAlkalinityMgPerL(alkalinity, calcium, magnesium),
});

import { ionBalance } from "../../core/water/ion-balance";
import { describeFunction } from "../describe";
import { sixIons, waterFrom } from "./six-ions";

export const waterBalance = describeFunction({
  id: "WATER.BALANCE",
  summary: "Whether a water report can be right: cations against anions.",
  parameters: {
    profile: {
      ...sixIons,
      doc: "Six numbers: calcium, magnesium, sodium, chloride, sulfate, bicarbonate; an empty cell counts as 0.",
    },
  },
  result: {
    kind: "grid",
    doc: "Four rows: cations and anions in meq/L, their difference in % of both, and a word: balanced, ions missing (potassium or nitrate may explain it), cannot be right.",
    columns: ["what", "value"],
  },
  equation:
    "cations = Ca / 20.04 + Mg / 12.15 + Na / 22.99; anions = Cl / 35.45 + SO4 / 48.03 + HCO3 / 61.02; % = 100 (cations − anions) / (cations + anions); balanced within 0.2 meq/L up to 3 meq/L of anions, 2 % up to 10, 5 % above; cannot be right beyond 10 % and 0.5 meq/L",
  sources: [
    {
      cite: "Standard Methods for the Examination of Water and Wastewater",
      where: "1030 E, checking correctness of analyses; limits from memory",
    },
    { cite: "common practice", where: "10 % or 0.5 meq/L for what six ions leave out" },
  ],
  examples: [
    {
      arguments: [[[60], [10], [5], [15], [25], [180]]],
      value: [
        ["cations (meq/L)", 4.034],
        ["anions (meq/L)", 3.894],
        ["difference (%)", 1.77],
        ["verdict", "balanced"],
      ],
      tolerance: 0.01,
      from: "worked by hand: 2.994 + 0.823 + 0.217 against 0.423 + 0.520 + 2.950",
    },
    {
      arguments: [[[60], [10], [5], [15], [25], [90]]],
      value: [
        ["cations (meq/L)", 4.034],
        ["anions (meq/L)", 2.419],
        ["difference (%)", 25.04],
        ["verdict", "cannot be right"],
      ],
      tolerance: 0.01,
      from: "worked by hand: half of the bicarbonate left out",
    },
  ],
  compute: ({ profile }) => {
    const { cationsMeqPerL, anionsMeqPerL, differencePercent, verdict } = ionBalance(waterFrom("profile", profile));
    return [
      ["cations (meq/L)", cationsMeqPerL],
      ["anions (meq/L)", anionsMeqPerL],
      ["difference (%)", differencePercent],
      ["verdict", verdict],
    ];
  },
});

import { massesForGravity } from "../../core/wort/bill";
import { describeFunction } from "../describe";
import { gravity, number, units } from "../vocabulary";
import { brewhouseEfficiency, fermentableColumns, palmer, wholeVolume } from "./fermentables";
import { sugarSolutions } from "./sugar-tables";

const shares = {
  kind: "table",
  doc: "The bill by parts of its mass, a row for each malt, extract or sugar. handling: mash, steep, extract or sugar. A fourth column, with the colour, may be selected with it.",
  columns: {
    share: number("number", {
      doc: "Part of the whole mass, in any unit: per cent, kilograms of another recipe, parts.",
      limits: { above: 0, atMost: 100000 },
      typical: 40,
    }),
    yield: fermentableColumns.yield,
    handling: fermentableColumns.handling,
  },
  layouts: [
    ["share", "yield", "handling"],
    ["share", "yield", "handling", null],
  ],
} as const;

export const wortBill = describeFunction({
  id: "WORT.BILL",
  summary: "How much of each malt, extract and sugar brings a volume of wort to the gravity you want.",
  parameters: {
    target: gravity("Gravity wanted.", { limits: { above: 1, atMost: 1.2 } }),
    volume: wholeVolume,
    shares,
    efficiency: brewhouseEfficiency,
    units,
  },
  result: {
    kind: "grid",
    doc: "Mass of each row of the shares (kg or lb), without a heading; empty where a row is not filled in. GYLE.WORT.GRAVITY gives the target back.",
    columns: ["mass"],
  },
  equation:
    "mass = share / Σ (share × yield × efficiency) × extract; extract = volume × kg/L of the sugar solution that has the target's density",
  sources: [sugarSolutions, palmer],
  examples: [
    {
      arguments: [1.04003, 20, [[1, 80, "extract"]]],
      value: [[2.595]],
      tolerance: 0.004,
      from: "worked by hand from NBS Table 114: 1.04003 is 10 °Bx, so 20 × 1.04003 × 0.9982 × 0.1 = 2.0763 kg of extract; / 0.8; that table weighs in air, ours in vacuo, 0.1 % apart",
    },
    {
      arguments: [
        1.059,
        20,
        [
          ["%", "yield", "handling"],
          [83.333, 80, "mash"],
          ["", "", ""],
          [6.25, 74, "steep"],
          [10.417, 100, "sugar"],
        ],
        75,
      ],
      value: [[4], [""], [0.3], [0.5]],
      tolerance: 0.02,
      from: "the bill of the second example of WORT.GRAVITY, 4 + 0.3 + 0.5 kg, worked by hand there from a printed table of sucrose solutions",
    },
    {
      arguments: [1.04, 5, [[100, 77.922, "extract"]], null, "us"],
      value: [[5.55]],
      tolerance: 0.02,
      from: "Palmer, How to Brew, ch. 3-4: 5.55 lb at 36 points in 5 US gal",
    },
  ],
  cautions: [
    "As good as the efficiency you give: take what GYLE.WORT.EFFICIENCY finds in your own batches. Strong wort gets less out of the grain.",
    "Select the heading row with the shares or leave it out: the answer begins at the first malt.",
  ],
  compute: ({ target, volume, shares: rows, efficiency }, { show }) => {
    const masses = massesForGravity(
      rows.map(({ share, yield: yieldPercent, handling }) => ({ share, yieldPercent, handling })),
      volume,
      target,
      efficiency,
    );
    const column: (string | number)[][] = Array.from({ length: rows.height }, () => [""]);
    rows.forEach(({ rowNumber }, index) => (column[rowNumber - 1] = [show("mass", masses[index] ?? NaN)]));
    return column;
  },
});

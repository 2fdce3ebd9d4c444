import { blendedWater } from "../../core/water/blend";
import { ionNames, pureWater } from "../../core/water/ions";
import { ArgumentProblem } from "../cell-error";
import { describeFunction } from "../describe";
import { list, number } from "../vocabulary";
import { ionColumns, ionRows } from "./ion-rows";

const ion = (name: string) =>
  number("concentration", { doc: `Its ${name}.`, limits: { atLeast: 0, atMost: 3000 }, blank: "zero", typical: 50 });

const profiles = {
  kind: "table",
  doc: "The waters, a row for each; an empty row counts as pure water. A column with their names may stand before it.",
  columns: {
    calcium: ion("calcium"),
    magnesium: ion("magnesium"),
    sodium: ion("sodium"),
    chloride: ion("chloride"),
    sulfate: ion("sulfate"),
    bicarbonate: ion("bicarbonate"),
  },
  layouts: [ionNames, [null, ...ionNames]],
} as const;

export const waterBlend = describeFunction({
  id: "WATER.BLEND",
  summary: "The ions of several waters poured together, for example tap water and demineralised water.",
  parameters: {
    shares: list("number", "How much of each water, in any unit: litres, gallons, parts or per cent.", {
      limits: { above: 0, atMost: 100000 },
      typical: 10,
    }),
    profiles,
  },
  result: { kind: "grid", doc: "Six rows, ion and mg/L.", columns: ionColumns },
  equation: "mg/L = Σ share × mg/L / Σ share",
  sources: [{ cite: "mass balance", where: "what is dissolved adds up; pH does not" }],
  examples: [
    {
      arguments: [
        [[6], [4]],
        [
          ["tap", 120, 10, 20, 30, 50, 300],
          ["demineralised", 0, 0, 0, 0, 0, 0],
        ],
      ],
      value: [
        ["calcium (Ca)", 72],
        ["magnesium (Mg)", 6],
        ["sodium (Na)", 12],
        ["chloride (Cl)", 18],
        ["sulfate (SO4)", 30],
        ["bicarbonate (HCO3)", 180],
      ],
      tolerance: 1e-9,
      from: "worked by hand: six tenths of the tap water",
    },
    {
      arguments: [
        [["parts", 1, 3]],
        [
          ["Ca", "Mg", "Na", "Cl", "SO4", "HCO3"],
          [100, 8, 12, 40, 60, 200],
          [20, 0, 4, 0, 20, 40],
        ],
      ],
      value: [
        ["calcium (Ca)", 40],
        ["magnesium (Mg)", 2],
        ["sodium (Na)", 6],
        ["chloride (Cl)", 10],
        ["sulfate (SO4)", 30],
        ["bicarbonate (HCO3)", 80],
      ],
      tolerance: 1e-9,
      from: "worked by hand: (1 × 100 + 3 × 20) / 4 and so on",
    },
  ],
  compute: ({ shares, profiles: rows }, context) => {
    // A heading above the shares arrives as a first empty cell, which the profiles have left out.
    const parts = shares.length === rows.height + 1 && shares[0] === null ? shares.slice(1) : shares;
    if (parts.length !== rows.height)
      throw new ArgumentProblem(
        "#VALUE!",
        `shares must hold one number for each row of profiles: there are ${parts.length} and ${rows.height}, headings not counted`,
      );
    return ionRows(
      blendedWater(
        parts.map((share, index) => ({ share: share ?? 0, water: rows.find(({ rowNumber }) => rowNumber === index + 1) ?? pureWater })),
      ),
      context,
    );
  },
});

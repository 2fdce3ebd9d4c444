import { pureWater, requireChalkDissolves, saltNames, withSalts } from "../../core/water/ions";
import { describeFunction } from "../describe";
import { choice, number, omissible, units, volume } from "../vocabulary";
import { ionColumns, ionRows } from "./ion-rows";
import { sixIons, waterFrom } from "./six-ions";

/** Calcium chloride is sold with its water of crystallisation unless the packet says anhydrous. */
export const otherSaltNames = {
  caso4: "gypsum",
  "calcium sulfate": "gypsum",
  "calcium sulphate": "gypsum",
  cacl2: "calcium chloride",
  mgso4: "epsom salt",
  "magnesium sulfate": "epsom salt",
  "magnesium sulphate": "epsom salt",
  mgcl2: "magnesium chloride",
  nacl: "table salt",
  salt: "table salt",
  "sea salt": "table salt",
  nahco3: "baking soda",
  "bicarbonate of soda": "baking soda",
  "sodium bicarbonate": "baking soda",
  caco3: "chalk",
  "calcium carbonate": "chalk",
  lime: "slaked lime",
  "pickling lime": "slaked lime",
  "calcium hydroxide": "slaked lime",
  "ca(oh)2": "slaked lime",
} as const;

const salts = {
  kind: "table",
  doc: `The salts, a row for each; grams also with us units. Names: ${saltNames.join(", ")}.`,
  columns: {
    salt: choice("What it is.", saltNames, otherSaltNames),
    mass: number("grams", {
      doc: "How much, g; 0, or an empty cell, for none.",
      limits: { atLeast: 0, atMost: 10000 },
      blank: "zero",
      typical: 5,
    }),
  },
  layouts: [["salt", "mass"]],
} as const;

export const waterIons = describeFunction({
  id: "WATER.IONS",
  summary: "What brewing salts make of a water: its six ions.",
  parameters: {
    salts,
    volume: volume("Water that they are dissolved in."),
    base: omissible({
      ...sixIons,
      doc: "The water before, six numbers: calcium, magnesium, sodium, chloride, sulfate, bicarbonate; an empty cell counts as 0. Pure water when left out.",
    }),
    units,
  },
  result: { kind: "grid", doc: "Six rows, ion and mg/L.", columns: ionColumns },
  equation: "mg/L = base + 1000 × mass (g) × moles of the ion × its molar mass / molar mass of the salt / volume (L)",
  sources: [
    {
      cite: "stoichiometry with atomic weights",
      where:
        "gypsum CaSO4·2H2O, calcium chloride CaCl2·2H2O, epsom salt MgSO4·7H2O, magnesium chloride MgCl2·6H2O; chalk and slaked lime as Ca with 2 HCO3",
    },
    {
      cite: "L. N. Plummer and E. Busenberg, Geochim. Cosmochim. Acta 46, 1982, 1011; W. Stumm and J. J. Morgan, Aquatic Chemistry",
      where: "chalk in water open to the air: Ca × HCO3² at most 5.7e-10 (mol/L)³ at 20 °C; their equations from memory",
    },
  ],
  examples: [
    {
      arguments: [
        [
          ["gypsum", 4],
          ["table salt", 2],
        ],
        20,
        [[60], [10], [5], [15], [25], [180]],
      ],
      value: [
        ["calcium (Ca)", 106.6],
        ["magnesium (Mg)", 10],
        ["sodium (Na)", 44.3],
        ["chloride (Cl)", 75.7],
        ["sulfate (SO4)", 136.6],
        ["bicarbonate (HCO3)", 180],
      ],
      tolerance: 0.06,
      from: "worked by hand: 4 g of gypsum in 20 L give 46.6 Ca and 111.6 SO4; 2 g of salt 39.3 Na and 60.7 Cl",
    },
    {
      arguments: [
        [
          ["salt", "g"],
          ["calcium chloride", 5],
        ],
        5,
        null,
        "us",
      ],
      value: [
        ["calcium (Ca)", 72.0],
        ["magnesium (Mg)", 0],
        ["sodium (Na)", 0],
        ["chloride (Cl)", 127.4],
        ["sulfate (SO4)", 0],
        ["bicarbonate (HCO3)", 0],
      ],
      tolerance: 0.06,
      from: "worked by hand: 1 g/US gal is 264.2 mg/L, of which 27.26 % Ca and 48.23 % Cl",
    },
  ],
  cautions: [
    "Only food-grade salts, and weigh them: a spoonful may be twice what you think. Calcium chloride draws water from the air and weakens in an open tin.",
    "Chalk hardly dissolves in plain water: more than stays dissolved in contact with air (52 mg/L in pure water, none in hard water) is refused. Slaked lime burns skin and eyes: goggles and gloves.",
  ],
  compute: ({ salts: rows, volume, base }, context) => {
    const before = base === undefined ? pureWater : waterFrom("base", base);
    const additions = rows.map(({ salt, mass }) => ({ salt, massG: mass }));
    requireChalkDissolves(before, additions, volume);
    return ionRows(withSalts(before, additions, volume), context);
  },
});

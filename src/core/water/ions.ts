/** The six ions of a water report, in its usual order. */
export const ionNames = ["calcium", "magnesium", "sodium", "chloride", "sulfate", "bicarbonate"] as const;
export type Ion = (typeof ionNames)[number];
/** mg/L. */
export type Water = Readonly<Record<Ion, number>>;

export const pureWater: Water = { calcium: 0, magnesium: 0, sodium: 0, chloride: 0, sulfate: 0, bicarbonate: 0 };

/** Molar masses, g/mol (standard atomic weights). */
const molar: Water = { calcium: 40.078, magnesium: 24.305, sodium: 22.98977, chloride: 35.453, sulfate: 96.0626, bicarbonate: 61.0168 };

interface Salt {
  readonly molarMass: number;
  /** Moles of each ion from a mole of the salt. */
  readonly ions: Partial<Water>;
}

/**
 * The salts as they are sold, with their water of crystallisation, which makes up to half of the mass. Chalk and slaked
 * lime count with their alkalinity as bicarbonate, two for each calcium, as if they dissolved completely.
 */
export const salts = {
  /** CaSO4·2H2O */
  gypsum: { molarMass: 172.171, ions: { calcium: 1, sulfate: 1 } },
  /** CaCl2·2H2O */
  "calcium chloride": { molarMass: 147.015, ions: { calcium: 1, chloride: 2 } },
  /** CaCl2 */
  "calcium chloride anhydrous": { molarMass: 110.984, ions: { calcium: 1, chloride: 2 } },
  /** MgSO4·7H2O */
  "epsom salt": { molarMass: 246.475, ions: { magnesium: 1, sulfate: 1 } },
  /** MgCl2·6H2O */
  "magnesium chloride": { molarMass: 203.303, ions: { magnesium: 1, chloride: 2 } },
  /** NaCl */
  "table salt": { molarMass: 58.4428, ions: { sodium: 1, chloride: 1 } },
  /** NaHCO3 */
  "baking soda": { molarMass: 84.0066, ions: { sodium: 1, bicarbonate: 1 } },
  /** CaCO3 */
  chalk: { molarMass: 100.0869, ions: { calcium: 1, bicarbonate: 2 } },
  /** Ca(OH)2 */
  "slaked lime": { molarMass: 74.0927, ions: { calcium: 1, bicarbonate: 2 } },
} as const satisfies Record<string, Salt>;

export type SaltName = keyof typeof salts;
export const saltNames = Object.keys(salts) as readonly SaltName[];

/** Water with each ion worked out from its name. */
export const waterOf = (amount: (ion: Ion) => number): Water => Object.fromEntries(ionNames.map((ion) => [ion, amount(ion)])) as unknown as Water;

/** The ions after salts were dissolved in a water, mg/L: what was there, and mass × moles × molar mass of the ion. */
export function withSalts(base: Water, additions: readonly { readonly salt: SaltName; readonly massG: number }[], volumeL: number): Water {
  return waterOf((ion) => {
    const addedMg = additions.reduce((sum, { salt, massG }) => {
      const { molarMass, ions }: Salt = salts[salt];
      return sum + (1000 * massG * molar[ion] * (ions[ion] ?? 0)) / molarMass;
    }, 0);
    return base[ion] + addedMg / volumeL;
  });
}

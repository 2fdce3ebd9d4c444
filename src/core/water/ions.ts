import { BrewingError } from "../brewing-error";
import { chalkSaturation } from "./carbonate";
import { bisect } from "../wort/bisect";

/** The six ions of a water report, in its usual order. */
export const ionNames = ["calcium", "magnesium", "sodium", "chloride", "sulfate", "bicarbonate"] as const;
export type Ion = (typeof ionNames)[number];
/** mg/L. */
export type Water = Readonly<Record<Ion, number>>;

export const pureWater: Water = { calcium: 0, magnesium: 0, sodium: 0, chloride: 0, sulfate: 0, bicarbonate: 0 };

/** Molar masses, g/mol (standard atomic weights). */
export const molar: Water = {
  calcium: 40.078,
  magnesium: 24.305,
  sodium: 22.98977,
  chloride: 35.453,
  sulfate: 96.0626,
  bicarbonate: 61.0168,
};

interface Salt {
  readonly molarMass: number;
  /** Moles of each ion from a mole of the salt. */
  readonly ions: Partial<Water>;
}

/**
 * The salts as they are sold, with their water of crystallisation, which makes up to half of the mass. Chalk and slaked
 * lime count with their alkalinity as bicarbonate, two for each calcium; of chalk see `requireChalkDissolves`.
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
export const waterOf = (amount: (ion: Ion) => number): Water =>
  Object.fromEntries(ionNames.map((ion) => [ion, amount(ion)])) as unknown as Water;

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

export interface SaltAddition {
  readonly salt: SaltName;
  readonly massG: number;
}

/** What chalk would make of a water, over what water in air can hold; up to 1 it dissolves. */
const fullness = (water: Water): number =>
  ((water.calcium / molar.calcium / 1000) * (water.bicarbonate / molar.bicarbonate / 1000) ** 2) / chalkSaturation;

/**
 * Refuses chalk that stays a powder. Without acid, water in air dissolves no more of it than calcium and bicarbonate may
 * stand beside each other (52 mg/L of chalk in pure water at 20 °C, none in hard water; constants in carbonate.ts): to count
 * the rest would promise an alkalinity that is not there.
 *
 * @throws BrewingError "uncovered" with the mass that does dissolve
 */
export function requireChalkDissolves(base: Water, additions: readonly SaltAddition[], volumeL: number): void {
  const chalkG = additions.reduce((sum, { salt, massG }) => sum + (salt === "chalk" ? massG : 0), 0);
  const others = additions.filter(({ salt }) => salt !== "chalk");
  const withChalk = (massG: number): Water => withSalts(base, [...others, { salt: "chalk", massG }], volumeL);
  if (chalkG === 0 || fullness(withChalk(chalkG)) <= 1) return;
  const most = fullness(withChalk(0)) >= 1 ? 0 : bisect((massG) => fullness(withChalk(massG)) - 1, 0, chalkG);
  const dissolves =
    most < 0.01 ? "no chalk dissolves in this water" : `only ${most.toFixed(2)} g of chalk dissolve in so much of this water`;
  throw new BrewingError(
    "uncovered",
    `salts: ${dissolves}, the rest stays a powder that does nothing until there is acid; for alkalinity take baking soda or slaked lime`,
  );
}

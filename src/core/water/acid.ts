import { BrewingError } from "../brewing-error";

interface Acid {
  readonly molarMass: number;
  readonly pKa: readonly number[];
  /** g/mL at 20 °C of a solution with this mass fraction. */
  readonly density: (massFraction: number) => number;
  /** Strength taken when none is given, % by mass: the strongest that is sold, so that a guess gives too little acid. */
  readonly usualPercent: number;
}

/**
 * The two acids. Lactic: pKa 3.86 (Martin and Tartar 3.857, quoted in its ECHA dossier), density along a line to 1.209
 * at 88 % (from memory). Phosphoric: pKa from memory, density a parabola through 1.053 at 10 % and 1.685 at 85 %; it
 * meets handbook values at 20 to 75 % within 0.7 %.
 */
export const acids = {
  lactic: { molarMass: 90.0779, pKa: [3.86], density: (w) => 0.998 + 0.24 * w, usualPercent: 88 },
  phosphoric: { molarMass: 97.9952, pKa: [2.148, 7.198, 12.35], density: (w) => 0.998 + 0.5156 * w + 0.3443 * w ** 2, usualPercent: 85 },
} as const satisfies Record<string, Acid>;

export type AcidName = keyof typeof acids;
export const acidNames = Object.keys(acids) as readonly AcidName[];

/** Where a mash works best; alkalinity that is left at this pH does no harm. */
export const mashPh = 5.4;

/** Hydrogen ions that a molecule of the acid gives off at a pH: the sum of its dissociated steps. */
export function equivalentsPerMole(name: AcidName, pH: number): number {
  const { pKa }: Acid = acids[name];
  const hydrogen = 10 ** -pH;
  // Amount of each form against the undissociated one: K1/h, K1 K2/h², ...
  let form = 1;
  let forms = 1;
  let charges = 0;
  pKa.forEach((exponent, index) => {
    form *= 10 ** -exponent / hydrogen;
    forms += form;
    charges += (index + 1) * form;
  });
  return charges / forms;
}

/** Moles of acid in a litre of the solution. */
export function acidMolPerL(name: AcidName, strengthPercent: number): number {
  const { density, molarMass }: Acid = acids[name];
  return (1000 * density(strengthPercent / 100) * strengthPercent) / 100 / molarMass;
}

/** Milligrams of CaCO3 for a milliequivalent. */
const calciumCarbonateMgPerMeq = 50.043;

/**
 * Acid that takes alkalinity out of water, mL, counted at the pH of a mash. What little bicarbonate is still there at
 * pH 5.4 (a tenth of it) is neglected, so the true dose is a little smaller.
 *
 * @param alkalinityMgPerL as CaCO3, as `targetMgPerL`
 * @throws BrewingError "impossible" when the water has less alkalinity than wished for
 */
export function acidMl(volumeL: number, alkalinityMgPerL: number, targetMgPerL: number, name: AcidName, strengthPercent: number = acids[name].usualPercent): number {
  if (targetMgPerL > alkalinityMgPerL) throw new BrewingError("impossible", "target_alkalinity is above alkalinity: acid only takes alkalinity away, so this water needs none");
  const milliequivalents = (volumeL * (alkalinityMgPerL - targetMgPerL)) / calciumCarbonateMgPerMeq;
  return milliequivalents / equivalentsPerMole(name, mashPh) / acidMolPerL(name, strengthPercent);
}

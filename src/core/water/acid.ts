import { BrewingError } from "../brewing-error";
import { alkalinityLeft, carbonOfTapWater, hydrogenAt } from "./carbonate";

interface Acid {
  readonly molarMass: number;
  readonly pKa: readonly number[];
  /** g/mL at 20 °C of a solution, by powers of its mass fraction from none on. */
  readonly densityPowers: readonly number[];
  /** Strength taken when none is given, % by mass: the strongest that is sold, so that a guess gives too little acid. */
  readonly usualPercent: number;
}

/**
 * The two acids. Lactic: pKa 3.86 (Martin and Tartar 3.857, quoted in its ECHA dossier), density along a line to 1.209
 * at 88 % (from memory). Phosphoric: pKa from memory, density a parabola through 1.053 at 10 % and 1.685 at 85 %; it
 * meets handbook values at 20 to 75 % within 0.7 %.
 */
export const acids = {
  lactic: { molarMass: 90.0779, pKa: [3.86], densityPowers: [0.998, 0.24], usualPercent: 88 },
  phosphoric: { molarMass: 97.9952, pKa: [2.148, 7.198, 12.35], densityPowers: [0.998, 0.5156, 0.3443], usualPercent: 85 },
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

/** g/mL at 20 °C. */
export const acidDensity = (name: AcidName, massFraction: number): number =>
  acids[name].densityPowers.reduce((sum: number, factor, power) => sum + factor * massFraction ** power, 0);

/** Moles of acid in a litre of the solution. */
export function acidMolPerL(name: AcidName, strengthPercent: number): number {
  const { molarMass } = acids[name];
  return (1000 * acidDensity(name, strengthPercent / 100) * strengthPercent) / 100 / molarMass;
}

/** Milligrams of CaCO3 for a milliequivalent. */
export const calciumCarbonateMgPerMeq = 50.043;

/**
 * Acid that takes alkalinity out of water, mL: what has to be neutralised, over the hydrogen ions that the acid gives off
 * at the pH which the water then has. That pH comes from the balance of the carbonates, with the carbon dioxide still in
 * the water (W. Stumm and J. J. Morgan, Aquatic Chemistry; constants in carbonate.ts).
 *
 * No water is taken below the pH of a mash: a tenth of the bicarbonate is left there, and does no harm. So the dose for a
 * target of 0 is that tenth smaller than the whole alkalinity would ask for.
 *
 * @param alkalinityMgPerL as CaCO3, as `targetMgPerL`
 * @throws BrewingError "impossible" when the water has less alkalinity than the target
 */
export function acidMl(
  volumeL: number,
  alkalinityMgPerL: number,
  targetMgPerL: number,
  name: AcidName,
  strengthPercent: number = acids[name].usualPercent,
): number {
  if (targetMgPerL > alkalinityMgPerL)
    throw new BrewingError(
      "impossible",
      "target_alkalinity is above alkalinity: acid only takes alkalinity away, so this water needs none",
    );
  const alkalinity = alkalinityMgPerL / calciumCarbonateMgPerMeq / 1000;
  const carbon = carbonOfTapWater(alkalinity);
  const left = Math.max(targetMgPerL / calciumCarbonateMgPerMeq / 1000, alkalinityLeft(carbon, 10 ** -mashPh));
  if (left >= alkalinity) return 0;
  const pH = -Math.log10(hydrogenAt(carbon, left));
  return (1000 * volumeL * (alkalinity - left)) / equivalentsPerMole(name, pH) / acidMolPerL(name, strengthPercent);
}

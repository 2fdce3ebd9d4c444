import { bisect } from "./bisect";
import { sugarSolutionDensityKgPerM3 } from "./density";

/** Sugar in a litre of the strongest solution, kg: the density equation ends at 80 % sugar by mass, which is 1.129. */
export const strongestKgPerL = 1.12;

const kgPerL = (sugarMassFraction: number): number => sugarSolutionDensityKgPerM3(sugarMassFraction, 20) / 1000;

/** Volume, litres at 20 °C, of a wort of so much mass with so much extract in it. */
export const volumeOfWortL = (massKg: number, extractKg: number): number => massKg / kgPerL(extractKg / massKg);

/** Mass, kg, of a litre of water at 20 °C by the same equation. */
export const waterKgPerL = kgPerL(0);

/**
 * Mass, kg, of a wort that fills so many litres at 20 °C with so much extract in it: the mass fraction w for which
 * w ρ(w) V is the extract.
 *
 * @returns undefined where that is more than the strongest solution holds
 */
export function massOfWortKg(volumeL: number, extractKg: number): number | undefined {
  if (extractKg > volumeL * strongestKgPerL) return undefined;
  return volumeL * kgPerL(bisect((w) => w * kgPerL(w) * volumeL - extractKg, 0, 0.8));
}

/**
 * Specific gravity 20/20 °C of a wort with so much extract in a litre.
 *
 * @param extractKgPerL 0 to `strongestKgPerL`
 */
export const gravityOfConcentration = (extractKgPerL: number): number => (massOfWortKg(1, extractKgPerL) ?? NaN) / waterKgPerL;

/**
 * Extract in a litre, kg, of a wort of a specific gravity 20/20 °C: the inverse, a little below 1.000 too.
 *
 * @param gravity 0.98 to 1.4
 */
export function concentrationOfGravity(gravity: number): number {
  const density = gravity * waterKgPerL;
  return density * bisect((w) => kgPerL(w) - density, -0.1, 0.8);
}

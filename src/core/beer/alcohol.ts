import { BrewingError } from "../brewing-error";
import { platoFromGravity } from "../wort/plato";

/** Balling's balance: what real extract is of the original and the apparent one, and what a gram of alcohol came from. */
export const balling = { original: 0.1808, apparent: 0.8192, perAlcohol: 2.0665, perExtract: 0.010665 } as const;

/** Alcohol by volume for each unit of gravity lost (common practice). */
export const alcoholPerGravity = { simple: 131.25, kit: 131 } as const;

/**
 * Refuses beer that is denser than the wort it came from: a reading, a scale or a unit must be wrong.
 *
 * @throws BrewingError "impossible" when the final gravity is above the original
 */
export function requireFermentation(originalGravity: number, finalGravity: number): void {
  if (finalGravity > originalGravity + 1e-9) {
    throw new BrewingError(
      "impossible",
      `final_gravity ${finalGravity.toFixed(3)} is above original_gravity ${originalGravity.toFixed(3)}; gravity falls during fermentation`,
    );
  }
}

/**
 * Real extract by Balling's attenuation rule, °P: 0.1808 OE + 0.8192 AE (De Clerck, A Textbook of Brewing, 1958,
 * vol. 2; the constants from memory).
 */
export function realExtractByBalling(originalPlato: number, apparentPlato: number): number {
  return balling.original * originalPlato + balling.apparent * apparentPlato;
}

/**
 * Alcohol by mass, % w/w, from the extract that disappeared: Balling's balance, 2.0665 g extract give 1 g alcohol,
 * 0.9565 g carbon dioxide and 0.11 g yeast (Balling 1865; 19th-century tables reproduced to 0.0015 %). Two gravities that are
 * equal but for rounding give none, not a hair less.
 */
export function alcoholByMassFromExtract(originalPlato: number, realExtractPlato: number): number {
  return Math.max(0, originalPlato - realExtractPlato) / (balling.perAlcohol - balling.perExtract * originalPlato);
}

/**
 * Alcohol by mass, % w/w, of a fermented wort.
 *
 * @param originalGravity specific gravity 20/20 °C before fermentation, 0.98 to 1.2
 * @param finalGravity specific gravity 20/20 °C now; not above the original
 * @throws BrewingError "impossible" when the gravity rose
 */
export function alcoholByMass(originalGravity: number, finalGravity: number): number {
  requireFermentation(originalGravity, finalGravity);
  const originalPlato = platoFromGravity(originalGravity);
  return alcoholByMassFromExtract(originalPlato, realExtractByBalling(originalPlato, platoFromGravity(finalGravity)));
}

/** Density of ethanol over that of water at 20 °C: 789.24 / 998.20 (OIML R 22), as used with % v/v at 20 °C. */
export const ethanolRelativeDensity = 0.791;

/** Alcohol by volume, % v/v at 20 °C, from alcohol by mass in beer of a given gravity. */
export function alcoholByVolumeFromMass(abwPercent: number, finalGravity: number): number {
  return (abwPercent * finalGravity) / ethanolRelativeDensity;
}

/** Alcohol by volume, % v/v at 20 °C, by way of the real extract; arguments and errors as `alcoholByMass`. */
export function alcoholByVolume(originalGravity: number, finalGravity: number): number {
  return alcoholByVolumeFromMass(alcoholByMass(originalGravity, finalGravity), finalGravity);
}

/**
 * Alcohol by mass, % w/w, from alcohol by volume in beer of a given gravity: the same relation the other way.
 *
 * @param finalGravity specific gravity 20/20 °C of the beer
 */
export function alcoholByMassFromVolume(abvPercent: number, finalGravity: number): number {
  return (abvPercent * ethanolRelativeDensity) / finalGravity;
}

/** Points lost times a fixed factor: 131.25, or 131 as printed in beginners' kits (common practice, from memory). */
export function alcoholByVolumeSimple(originalGravity: number, finalGravity: number, factor: 131.25 | 131): number {
  requireFermentation(originalGravity, finalGravity);
  return factor * Math.max(0, originalGravity - finalGravity);
}

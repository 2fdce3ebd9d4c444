import { requireFermentation } from "../beer/alcohol";
import { realExtractPlato } from "../beer/real-extract";
import { gravityFromPlato, platoFromGravity } from "../wort/plato";

/**
 * Final gravity to expect from the attenuation of a yeast: the apparent extract that is left, AE = OE (1 - a), as a
 * gravity. The rule of thumb that takes the share off the points of the gravity ends higher: by less than 0.001 up to
 * 1.060, by up to 0.0022 at 1.100.
 *
 * @param originalGravity above 1.0 to 1.2
 * @param attenuationPercent apparent attenuation, above 0 to 110 % (a very dry beer ends below 1.000)
 */
export function expectedFinalGravity(originalGravity: number, attenuationPercent: number): number {
  return gravityFromPlato(platoFromGravity(originalGravity) * (1 - attenuationPercent / 100));
}

/**
 * Apparent attenuation, %: the share of the extract that has gone, as the hydrometer shows it. Alcohol is lighter than
 * water, so it shows more than really went.
 *
 * @throws BrewingError "impossible" when the gravity rose
 */
export function apparentAttenuation(originalGravity: number, gravity: number): number {
  requireFermentation(originalGravity, gravity);
  const original = platoFromGravity(originalGravity);
  return (100 * (original - platoFromGravity(gravity))) / original;
}

/** The divisor of `realAttenuation`, for each degree of real extract. */
export const fermentedLoss = 0.005161;

/**
 * Real degree of fermentation, %: the share of the extract that the yeast really ate, by way of the real extract; the
 * divisor accounts for the alcohol that has left the extract (ASBC Methods of Analysis, Beer-6; the constant from memory).
 *
 * @throws BrewingError "impossible" when the gravity rose
 */
export function realAttenuation(originalGravity: number, gravity: number): number {
  const real = realExtractPlato(originalGravity, gravity);
  const original = platoFromGravity(originalGravity);
  return (100 * (original - real)) / original / (1 - fermentedLoss * real);
}

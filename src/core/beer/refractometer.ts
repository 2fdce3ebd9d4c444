import { BrewingError } from "../brewing-error";
import { platoFromGravity } from "../wort/plato";

/** Terrill's line: what a degree Brix of the wort takes from the gravity, and one of the beer adds. */
export const perOriginalBrix = 0.00085683;
export const perBrix = 0.0034941;

/** Apparent attenuation, %, from which on the fit was made. */
export const leastAttenuationPercent = 61;

/**
 * Specific gravity 20/20 °C of fermenting beer from two refractometer readings, before fermentation and now. Alcohol
 * bends light too, so the second reading alone says little: Terrill (2011) fitted FG = 1 − 0.00085683 Bi + 0.0034941 Bf
 * to measured beers; of his two curves the linear one is the more accurate. Good to about ±0.002.
 *
 * @param originalBrix reading of the wort, 1 to 40 °Bx
 * @param brix reading now, not above the first
 * @param wortCorrection both readings are divided by it (see `gravityFromRefractometer`)
 * @throws BrewingError "impossible" when the reading rose; "uncovered" below 61 % apparent attenuation
 */
export function gravityFromRefractometerReadings(originalBrix: number, brix: number, wortCorrection: number): number {
  if (brix > originalBrix) {
    throw new BrewingError("impossible", `brix ${brix} is above original_brix ${originalBrix}; the reading falls during fermentation`);
  }
  const original = originalBrix / wortCorrection;
  const gravity = 1 - perOriginalBrix * original + (perBrix * brix) / wortCorrection;
  const attenuationPercent = (100 * (original - platoFromGravity(gravity))) / original;
  if (attenuationPercent < leastAttenuationPercent) {
    throw new BrewingError(
      "uncovered",
      `brix after original_brix comes to ${attenuationPercent.toFixed(0)} % attenuation; Terrill's curve covers ${leastAttenuationPercent} % and more: use a hydrometer until then`,
    );
  }
  return gravity;
}

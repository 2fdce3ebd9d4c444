import { gravityFromPlato, platoFromGravity } from "../wort/plato";
import { alcoholByMass, balling, realExtractByBalling } from "./alcohol";

export interface BlendedBeer {
  /** In any one unit. */
  readonly volume: number;
  readonly originalGravity: number;
  readonly finalGravity: number;
}

/**
 * The two gravities of beers that were poured together. By Balling's balance a gram of alcohol leaves 1.0665 g of gas and
 * yeast behind in the wort that it came from, so that beer weighs so much less than its wort: real extract adds up by the
 * mass of the beers, original extract by that of the worts, and the alcohol of the two is the alcohol of all.
 *
 * @throws BrewingError "impossible" when the gravity of one rose
 */
export function blendOf(beers: readonly BlendedBeer[]): { originalGravity: number; finalGravity: number } {
  let [beer, wort, original, real] = [0, 0, 0, 0];
  for (const { volume, originalGravity, finalGravity } of beers) {
    const own = volume * finalGravity;
    const ownWort = own * (1 + ((balling.perAlcohol - 1) * alcoholByMass(originalGravity, finalGravity)) / 100);
    const plato = platoFromGravity(originalGravity);
    beer += own;
    wort += ownWort;
    original += ownWort * plato;
    real += own * realExtractByBalling(plato, platoFromGravity(finalGravity));
  }
  const apparent = (real / beer - (balling.original * original) / wort) / balling.apparent;
  return { originalGravity: gravityFromPlato(original / wort), finalGravity: gravityFromPlato(apparent) };
}

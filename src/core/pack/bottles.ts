import { BrewingError } from "../brewing-error";

/**
 * Whole bottles that a volume of beer fills, and what is left over.
 *
 * @param volumeL beer in the vessel, above 0
 * @param bottleL one bottle, above 0
 * @param lossL sediment, hose and tasting, 0 or more
 * @throws BrewingError "impossible" when the loss is more than the beer
 */
export function fillBottles(volumeL: number, bottleL: number, lossL: number): { bottles: number; leftL: number } {
  const beerL = volumeL - lossL;
  if (beerL < -1e-9) throw new BrewingError("impossible", "loss is more than volume: no beer is left to bottle");
  const bottles = Math.floor(beerL / bottleL + 1e-9);
  return { bottles, leftL: Math.max(0, beerL - bottles * bottleL) };
}

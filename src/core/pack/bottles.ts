import { BrewingError } from "../brewing-error";

/**
 * Whole bottles that a volume of beer fills, and what is left over.
 *
 * @param volumeL beer in the vessel, above 0
 * @param bottleL one bottle, above 0
 * @param lossL sediment, hose and tasting, 0 or more
 * @param syrupL what the priming sugar was boiled in, 0 or more
 * @throws BrewingError "impossible" when the loss is more than the beer
 */
export function fillBottles(volumeL: number, bottleL: number, lossL: number, syrupL = 0): { bottles: number; leftL: number } {
  const beerL = volumeL - lossL;
  if (beerL < -1e-9) throw new BrewingError("impossible", "loss is more than volume: no beer is left to bottle");
  const filledL = beerL + syrupL;
  const bottles = Math.floor(filledL / bottleL + 1e-9);
  return { bottles, leftL: Math.max(0, filledL - bottles * bottleL) };
}

import { BrewingError } from "../brewing-error";

/**
 * Part of a mash to draw, boil and return, in the unit of the volume: the boiled part gives off the heat that the
 * rest takes up, and both hold as much in a litre. A thick decoction holds up to a fifth less than thin mash, and pots cool it.
 *
 * @throws BrewingError "impossible" where the mash is not to be warmed, or not below the boil
 */
export function decoctionVolume(volume: number, fromC: number, targetC: number, boilsAtC: number): number {
  if (targetC < fromC) throw new BrewingError("impossible", "target is below from: a decoction cannot cool the mash");
  if (targetC >= boilsAtC) throw new BrewingError("impossible", "target must be below boils_at");
  return (volume * (targetC - fromC)) / (boilsAtC - fromC);
}

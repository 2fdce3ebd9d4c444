import { BrewingError } from "../brewing-error";
import { bisect } from "../wort/bisect";
import { alcoholByVolume } from "./alcohol";

/** Top of the gravity scale that the project accepts. */
const highestGravity = 1.2;

/**
 * The original gravity that makes this much alcohol by the time the beer stands at its final gravity: the inverse of
 * `alcoholByVolume`, to 1e-12.
 *
 * @param abvPercent alcohol, % by volume at 20 °C
 * @throws BrewingError "unsolvable" when a wort of 1.200 would not be enough
 */
export function originalGravityFromAlcohol(abvPercent: number, finalGravity: number): number {
  const most = alcoholByVolume(highestGravity, finalGravity);
  if (abvPercent > most) {
    throw new BrewingError(
      "unsolvable",
      `${abvPercent} % alcohol at final_gravity ${finalGravity.toFixed(3)} would take a wort above 1.200 (which gives ${most.toFixed(1)} %)`,
    );
  }
  return bisect((originalGravity) => alcoholByVolume(originalGravity, finalGravity) - abvPercent, finalGravity, highestGravity);
}

import { BrewingError } from "../brewing-error";
import { platoFromGravity } from "./plato";

/**
 * Water, litres at 20 °C, that brings a wort down to a lower gravity. The sugar stays the same while the mass grows, so
 * water = V SG (P1 / P2 − 1); exact, also for the small shrinkage on mixing.
 *
 * @param volumeL volume of the wort at 20 °C
 * @param gravity specific gravity of the wort now
 * @param targetGravity specific gravity wanted, above 1.000 and not above the present one
 * @throws BrewingError "impossible" when the target lies above the wort; "unsolvable" when no amount of water gets there
 */
export function waterToThinL(volumeL: number, gravity: number, targetGravity: number): number {
  if (targetGravity > gravity) {
    throw new BrewingError(
      "impossible",
      `target ${targetGravity.toFixed(3)} is above gravity ${gravity.toFixed(3)}; water only lowers it: boil some off, or add extract or sugar`,
    );
  }
  if (targetGravity <= 1) {
    throw new BrewingError("unsolvable", `no amount of water thins a wort to ${targetGravity.toFixed(3)}; target must be above 1.000`);
  }
  return volumeL * gravity * (platoFromGravity(gravity) / platoFromGravity(targetGravity) - 1);
}

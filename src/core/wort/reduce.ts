import { BrewingError } from "../brewing-error";
import { platoFromGravity } from "./plato";

/**
 * Drop in volume, litres at 20 °C, by which boiling raises a wort to a higher gravity. Only water leaves, so the mass of
 * sugar V SG P is kept and the volume left is V SG1 P1 / (SG2 P2).
 *
 * @param volumeL volume of the wort before, as it would be at 20 °C
 * @param gravity specific gravity before, above 1.000
 * @param targetGravity specific gravity wanted, not below the present one
 * @throws BrewingError "impossible" when the target lies below the wort; "unsolvable" when there is no sugar to concentrate
 */
export function volumeToBoilOffL(volumeL: number, gravity: number, targetGravity: number): number {
  if (targetGravity < gravity) {
    throw new BrewingError(
      "impossible",
      `target ${targetGravity.toFixed(3)} is below gravity ${gravity.toFixed(3)}; boiling only raises it: add water`,
    );
  }
  if (gravity <= 1) throw new BrewingError("unsolvable", `gravity ${gravity.toFixed(3)} has no sugar that boiling could concentrate`);
  const sugarPerLitre = (sg: number): number => sg * platoFromGravity(sg);
  return volumeL * (1 - sugarPerLitre(gravity) / sugarPerLitre(targetGravity));
}

import { BrewingError } from "../brewing-error";
import { waterKgPerL20C } from "./density";
import { platoFromGravity } from "./plato";

/**
 * Mass, kg, of malt extract or sugar that raises a wort to a higher gravity. What is added brings extract and, for the
 * rest, water: (M P1 + m Y) / (M + m) = P2. The volume grows by what goes in.
 *
 * @param volumeL volume of the wort now, at 20 °C
 * @param yieldPercent extract of the addition, % by mass
 * @throws BrewingError "impossible" when the target lies below the wort; "unsolvable" when the addition is too weak
 */
export function massToEnrichKg(volumeL: number, gravity: number, targetGravity: number, yieldPercent: number): number {
  if (targetGravity < gravity) {
    throw new BrewingError("impossible", `target ${targetGravity.toFixed(3)} is below gravity ${gravity.toFixed(3)}; an addition only raises it: add water`);
  }
  const targetPlato = platoFromGravity(targetGravity);
  if (yieldPercent <= targetPlato) {
    throw new BrewingError("unsolvable", `an addition of ${yieldPercent} % extract never brings a wort to ${targetPlato.toFixed(1)} °P`);
  }
  return (volumeL * gravity * waterKgPerL20C * (targetPlato - platoFromGravity(gravity))) / (yieldPercent - targetPlato);
}

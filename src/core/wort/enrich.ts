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
    throw new BrewingError(
      "impossible",
      `target ${targetGravity.toFixed(3)} is below gravity ${gravity.toFixed(3)}; an addition only raises it: add water`,
    );
  }
  const targetPlato = platoFromGravity(targetGravity);
  if (yieldPercent <= targetPlato) {
    throw new BrewingError("unsolvable", `an addition of ${yieldPercent} % extract never brings a wort to ${targetPlato.toFixed(1)} °P`);
  }
  return (volumeL * gravity * waterKgPerL20C * (targetPlato - platoFromGravity(gravity))) / (yieldPercent - targetPlato);
}

/** Volume, litres at 20 °C, of a wort once so much extract or sugar in it has brought it to a higher gravity: mass stays mass. */
export const enrichedVolumeL = (volumeL: number, gravity: number, massKg: number, reachedGravity: number): number =>
  (volumeL * gravity + massKg / waterKgPerL20C) / reachedGravity;

/**
 * Water, litres at 20 °C, and malt extract, kg, that bring a wort to another volume at another gravity: the extract brings
 * the sugar that is missing, the water what is still missing of the mass.
 *
 * @param yieldPercent extract of the addition, % by mass
 * @throws BrewingError "impossible" where either would have to be taken out
 */
export function waterAndExtract(
  volumeL: number,
  gravity: number,
  targetVolumeL: number,
  targetGravity: number,
  yieldPercent: number,
): { readonly waterL: number; readonly massKg: number } {
  const [massNow, massThen] = [volumeL * gravity * waterKgPerL20C, targetVolumeL * targetGravity * waterKgPerL20C];
  const massKg = (massThen * platoFromGravity(targetGravity) - massNow * platoFromGravity(gravity)) / yieldPercent;
  const waterL = (massThen - massNow - massKg) / waterKgPerL20C;
  if (massKg < 0 || waterL < 0) throw new BrewingError("impossible", "the wort holds more than the one wanted");
  return { waterL, massKg };
}

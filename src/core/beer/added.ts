import { BrewingError } from "../brewing-error";
import { waterKgPerL20C } from "../wort/density";
import { gravityFromPlato, platoFromGravity } from "../wort/plato";

/** Sugar or fruit that goes into fermenting beer. */
export interface Addition {
  readonly massKg: number;
  /** Sugar in it, % by mass; the rest counts as water. */
  readonly sugarPercent: number;
}

/**
 * Original gravity that a wort would have had, had all that came in later been in it from the beginning: masses and extract
 * add up.
 *
 * @param volumeL volume of the wort at 20 °C when the yeast went in
 * @throws BrewingError "uncovered" above 1.200, where the sugar tables end
 */
export function gravityWithAdditions(originalGravity: number, volumeL: number, additions: readonly Addition[]): number {
  let massKg = volumeL * originalGravity * waterKgPerL20C;
  let extractKg = (massKg * platoFromGravity(originalGravity)) / 100;
  for (const addition of additions) {
    massKg += addition.massKg;
    extractKg += (addition.massKg * addition.sugarPercent) / 100;
  }
  const plato = (100 * extractKg) / massKg;
  if (plato > platoFromGravity(1.2) + 1e-9)
    throw new BrewingError(
      "uncovered",
      `additions bring the wort to ${plato.toFixed(1)} °P; the sugar tables end at 1.200: check the masses`,
    );
  return gravityFromPlato(plato);
}

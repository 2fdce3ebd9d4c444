import { platoFromGravity, gravityFromPlato } from "../wort/plato";

/**
 * The lowest gravity that a wort can ferment to: where no real extract is left, 0 = 0.1808 OE + 0.8192 AE by Balling's
 * rule (De Clerck 1958; the constants from memory). Never below 0.98, where the sugar table ends.
 *
 * @param originalGravity specific gravity of the wort, 0.98 to 1.2
 */
export function lowestPossibleGravity(originalGravity: number): number {
  const dry = gravityFromPlato((-0.1808 / 0.8192) * Math.max(platoFromGravity(originalGravity), 0));
  return Math.max(dry, 0.98);
}

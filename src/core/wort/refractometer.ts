import { gravityFromPlato } from "./plato";

/**
 * Specific gravity 20/20 °C of unfermented wort from a refractometer that shows °Brix, temperature already compensated.
 *
 * A refractometer is marked for cane sugar; the sugars of wort bend light a little more for the same extract, so the
 * reading is divided by a wort correction, about 1.04 (Terrill 2011; each instrument has its own).
 *
 * @param brix as read, 0 to 45 °Bx
 * @param wortCorrection reading divided by true °P, 0.9 to 1.2; 1 for a plain sugar solution
 */
export function gravityFromRefractometer(brix: number, wortCorrection: number): number {
  return gravityFromPlato(brix / wortCorrection);
}

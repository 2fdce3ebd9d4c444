import { BrewingError } from "../brewing-error";

export interface ColouredFermentable {
  readonly massKg: number;
  /** Degrees Lovibond; 0 for sugar. */
  readonly colourLovibond: number;
}

/** Malt colour units (lb × °L per US gallon) in one kg × °L per litre. */
const maltColourUnitsPerKgLovibondPerL = 3.785411784 / 0.45359237;

/**
 * Colour of a beer, SRM, from its malts: Morey's curve SRM = 1.4922 MCU^0.6859, stated by its author for SRM below 50.
 * The malt colour units of the whole grist are added before the power is taken.
 *
 * @param volumeL whole volume of the wort at 20 °C
 * @throws BrewingError "uncovered" from SRM 50 on
 */
export function beerColourSrm(fermentables: readonly ColouredFermentable[], volumeL: number): number {
  const kgLovibond = fermentables.reduce((sum, { massKg, colourLovibond }) => sum + massKg * colourLovibond, 0);
  const srm = 1.4922 * ((kgLovibond / volumeL) * maltColourUnitsPerKgLovibondPerL) ** 0.6859;
  if (srm >= 50) {
    throw new BrewingError("uncovered", `fermentables come to about ${srm.toFixed(0)} SRM; Morey's curve covers less than 50, where beer is black: check malt colours, volume, units and scale`);
  }
  return srm;
}

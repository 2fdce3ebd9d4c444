import { BrewingError } from "../brewing-error";

export interface ColouredFermentable {
  readonly massKg: number;
  /** Degrees Lovibond; 0 for sugar. */
  readonly colourLovibond: number;
}

/** Malt colour units (lb × °L per US gallon) in one kg × °L per litre. */
export const maltColourUnitsPerKgLovibondPerL = 3.785411784 / 0.45359237;

/** The fit of `beerColourSrm`. */
export const colourFit = { factor: 1.4922, power: 0.6859 } as const;

/** A grist of nothing but black malt makes some 200: what is above this is a slip. */
export const mostSrm = 300;

/**
 * Colour of a beer, SRM, from its malts: Morey's curve SRM = 1.4922 MCU^0.6859, stated by its author for SRM below 50;
 * above, the same curve carried on, which tells one black beer from another and no more. The malt colour units of the
 * whole grist are added before the power is taken.
 *
 * @param volumeL whole volume of the wort at 20 °C
 * @throws BrewingError "uncovered" above SRM 300, which no grist gives
 */
export function beerColourSrm(fermentables: readonly ColouredFermentable[], volumeL: number): number {
  const kgLovibond = fermentables.reduce((sum, { massKg, colourLovibond }) => sum + massKg * colourLovibond, 0);
  const srm = colourFit.factor * ((kgLovibond / volumeL) * maltColourUnitsPerKgLovibondPerL) ** colourFit.power;
  if (srm > mostSrm) {
    throw new BrewingError(
      "uncovered",
      `fermentables come to about ${srm.toFixed(0)} SRM; black malt alone gives no more than 200: check malt colours, volume, units and scale`,
    );
  }
  return srm;
}

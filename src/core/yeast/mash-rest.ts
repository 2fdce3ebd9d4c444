/**
 * How the temperature of a single infusion rest changes what can be fermented: highest at 64.5 °C and lower by the
 * square of the distance on either side. Drawn by us through limits of attenuation published for single rests of an hour
 * (K. Troester, Effects of Mash Parameters on Fermentability and Efficiency in Single Infusion Mashing, 2009; the same
 * course in H. Windisch, P. Kolbach and E. Schild, Wochenschrift für Brauerei 49, 1932, as textbooks quote it), all from memory.
 */
export const mashRest = { bestC: 64.5, lossPerSquare: 0.0027, usualC: 66.5, coveredFromC: 60, coveredToC: 74 } as const;

const fermentable = (restC: number): number => 1 - mashRest.lossPerSquare * (restC - mashRest.bestC) ** 2;

/**
 * Apparent attenuation to expect, %, of a yeast whose figure holds for a wort mashed at 66.5 °C.
 *
 * @param restC 60 to 74
 */
export const expectedAttenuation = (restC: number, attenuationPercent: number): number =>
  (attenuationPercent * fermentable(restC)) / fermentable(mashRest.usualC);

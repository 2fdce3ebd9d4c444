/** Litres per kilogram in one US gallon per pound (NIST SP 811, both factors exact). */
const litresPerKgInGallonPerPound = 3.785411784 / 0.45359237;

/**
 * Extract potential of pure sugar, litre-degrees per kilogram: 46.2 points from a pound in a US gallon of wort
 * (Palmer, How to Brew, ch. 3-4; 46.13 by the ICUMSA densities), or 385.56 L°/kg.
 */
export const pureSugarPointsLPerKg = 46.2 * litresPerKgInGallonPerPound;

/** Extract yield, % by mass of the fermentable as it is, from points (L°/kg, 0 to 385.56). */
export function yieldPercentFromPoints(pointsLPerKg: number): number {
  return (100 * pointsLPerKg) / pureSugarPointsLPerKg;
}

/** Points (L°/kg) from extract yield, % by mass (0 to 100): the inverse. */
export function pointsFromYieldPercent(yieldPercent: number): number {
  return (yieldPercent / 100) * pureSugarPointsLPerKg;
}

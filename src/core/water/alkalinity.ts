/** So many equivalents of each take one of alkalinity away in the mash: see `residualAlkalinityMgPerL`. */
export const mashLoss = { calcium: 3.5, magnesium: 7 } as const;

/** Milligrams of CaCO3 that are equivalent to a milligram of the ion, from the molar masses (g/mol). */
export const calciumCarbonatePerCalcium = 100.0869 / 40.078;
export const calciumCarbonatePerMagnesium = 100.0869 / 24.305;

/**
 * Residual alkalinity, mg/L as CaCO3: what is left of the alkalinity after calcium and magnesium have met the phosphate
 * of the malt, in equivalents Ca / 3.5 and Mg / 7 (P. Kolbach 1951/53). It may be negative. With the ions in mg/L the
 * divisors become 1.40 and 1.70.
 *
 * @param alkalinityMgPerL as CaCO3
 */
export function residualAlkalinityMgPerL(alkalinityMgPerL: number, calciumMgPerL: number, magnesiumMgPerL: number): number {
  return (
    alkalinityMgPerL -
    (calciumCarbonatePerCalcium * calciumMgPerL) / mashLoss.calcium -
    (calciumCarbonatePerMagnesium * magnesiumMgPerL) / mashLoss.magnesium
  );
}

import { BrewingError } from "../brewing-error";

/**
 * What dry hops do to bitterness, for each gram in a litre (all figures from memory):
 *
 * - `isoLost`: share of the iso-alpha acid that sticks to the hops and leaves with them, 48 mg/L to 30 with 7.7 g/L (J. P.
 *   Maye and R. Smith, MBAA Technical Quarterly 53(3), 2016);
 * - `humulinonesMg`: oxidised alpha acid that dissolves, 0.2 to 0.5 % of hop pellets (J. P. Maye, R. Smith and J. Leker, MBAA
 *   Technical Quarterly 53(1), 2016), nearly all of it;
 * - `humulinoneTaste`: how bitter that tastes beside iso-alpha acid, 66 % ± 13 % (V. Algazzali and T. Shellhammer, Journal of
 *   the ASBC 74(1), 2016).
 */
export const dryHopping = { isoLost: 0.06, humulinonesMg: 3, humulinoneTaste: 0.66 } as const;

/** Most that was tried in the beers above and by S. Lafontaine and T. Shellhammer (Journal of the Institute of Brewing 124, 2018), g/L. */
export const mostDryHopsGPerL = 16;

/**
 * Bitterness as it tastes after dry hopping, in mg/L of iso-alpha acid: weakly bittered beer becomes more bitter, strongly
 * bittered beer less. ± about a quarter.
 *
 * @param ibu bitterness before, 0 or more
 * @param gramsPerL 0 to 16
 * @throws BrewingError "uncovered" above that
 */
export function bitternessAfterDryHopping(ibu: number, gramsPerL: number): number {
  if (gramsPerL > mostDryHopsGPerL * (1 + 1e-9))
    throw new BrewingError(
      "uncovered",
      `mass comes to ${gramsPerL.toFixed(1)} g/L; what is published covers up to ${mostDryHopsGPerL} g/L`,
    );
  const { isoLost, humulinonesMg, humulinoneTaste } = dryHopping;
  return ibu * Math.exp(-isoLost * gramsPerL) + humulinoneTaste * humulinonesMg * gramsPerL;
}

/**
 * Mass of another hop with the same alpha acid in it, in the unit of `mass` (common practice). Aroma and oil are not considered.
 *
 * @param newAlphaPercent above 0
 */
export function massForSameAlpha(mass: number, alphaPercent: number, newAlphaPercent: number): number {
  return (mass * alphaPercent) / newAlphaPercent;
}

/**
 * Bitterness for each point of original gravity: IBU / (1000 (OG - 1)) (R. Daniels, Designing Great Beers, 1996, from memory).
 *
 * @param originalGravity above 1.000
 */
export function bitternessPerPoint(ibu: number, originalGravity: number): number {
  return ibu / (1000 * (originalGravity - 1));
}

/** Mass of another hop with the same alpha acid in it, in the unit of `mass`. Aroma and oil are not considered. */
export function massForSameAlpha(mass: number, alphaPercent: number, newAlphaPercent: number): number {
  return (mass * alphaPercent) / newAlphaPercent;
}

/** Bitterness for each point of original gravity: IBU / (1000 (OG - 1)). */
export function bitternessPerPoint(ibu: number, originalGravity: number): number {
  return ibu / (1000 * (originalGravity - 1));
}

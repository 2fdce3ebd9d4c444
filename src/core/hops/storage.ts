/** The loss is stated for so many days at this temperature, and doubles with every so many degrees. */
export const agedBy = { days: 180, atC: 20, doublesEveryC: 15 } as const;

/** Storage factor of the package (M. Garetz, Brewing Techniques 2(1), 1994; the three figures from memory). */
export const packageFactors = { loose: 1, sealed: 0.75, barrier: 0.5 } as const;
export type HopPackage = keyof typeof packageFactors;
export const hopPackages = Object.keys(packageFactors) as readonly HopPackage[];

/**
 * Alpha acid left in stored hops, in the unit of `alphaPercent`: first-order loss whose rate halves with every 15 °C
 * below 20 °C (Garetz 1994, after Nickerson and Likens).
 *
 * @param days since the alpha acid was measured, 0 or more
 * @param temperatureC of storage, -40 to 40 °C
 * @param lossPercent share of the alpha acid that the variety loses in 180 days at 20 °C in the open, 0 to below 100 %
 */
export function agedAlphaPercent(
  alphaPercent: number,
  days: number,
  temperatureC: number,
  lossPercent: number,
  container: HopPackage,
): number {
  const ratePerDay = -Math.log(1 - lossPercent / 100) / agedBy.days;
  const temperatureFactor = 2 ** ((temperatureC - agedBy.atC) / agedBy.doublesEveryC);
  return alphaPercent * Math.exp(-ratePerDay * temperatureFactor * packageFactors[container] * days);
}

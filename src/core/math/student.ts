/** The normal deviate that 2.5 % lie above. */
const normalQuantile = 1.959964;

/**
 * Student's t that 2.5 % lie above, so that ± t holds 95 %: expansion in 1/ν (Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 1964, 26.7.5), within 0.001 from ν = 8 on.
 *
 * @param degreesOfFreedom 8 or more
 */
export function studentQuantile95(degreesOfFreedom: number): number {
  const z = normalQuantile;
  return (
    z +
    (z ** 3 + z) / (4 * degreesOfFreedom) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * degreesOfFreedom ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * degreesOfFreedom ** 3)
  );
}

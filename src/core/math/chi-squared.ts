/**
 * Probability that a variable with the chi-squared distribution is above a value: 1 less the series of the incomplete gamma
 * function (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.4.1 and 6.5.29), which ends soon for
 * the few degrees of freedom and the values that occur here. Good to 1e-14 or so, absolute.
 *
 * @param value 0 or more
 * @param freedom degrees of freedom, a whole number above 0
 */
export function chiSquaredAbove(value: number, freedom: number): number {
  // Further out nothing is left, and the series would be too large to write.
  const x = Math.min(value, 1200) / 2;
  // x^(f/2) e^-x / Γ(f/2 + 1), from f = 2 or 1 on in steps of 2.
  const even = freedom % 2 === 0;
  let term = even ? Math.exp(-x) : 2 * Math.sqrt(x / Math.PI) * Math.exp(-x);
  for (let half = even ? 1 : 1.5; half <= freedom / 2; half++) term *= x / half;
  let below = 0;
  for (let half = freedom / 2 + 1; term > 1e-18 || half < x; half++) {
    below += term;
    term *= x / half;
  }
  return Math.max(0, 1 - below);
}

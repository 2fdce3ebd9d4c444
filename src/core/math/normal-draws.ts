/**
 * An endless row of draws from the standard normal distribution, the same one every time: the minimal standard
 * generator of S. K. Park and K. W. Miller (Comm. ACM 31, 1988, 1192) turned normal as G. E. P. Box and
 * M. E. Muller do (Ann. Math. Statist. 29, 1958, 610).
 */
export function normalDraws(): () => number {
  const modulus = 2147483647;
  let state = 20081;
  const uniform = (): number => {
    state = (state * 16807) % modulus;
    return state / modulus;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

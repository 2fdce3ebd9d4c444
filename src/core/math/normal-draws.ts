/**
 * An endless row of numbers between 0 and 1, the same one every time: the minimal standard generator of S. K. Park and
 * K. W. Miller (Comm. ACM 31, 1988, 1192).
 */
export function uniformDraws(): () => number {
  const modulus = 2147483647;
  let state = 20081;
  return () => {
    state = (state * 16807) % modulus;
    return state / modulus;
  };
}

/**
 * The value that a standard normal variable stays below with a probability: M. J. Wichura, algorithm AS 241 (Appl. Statist.
 * 37, 1988, 477), its shorter form PPND7, good to seven digits.
 *
 * @param probability above 0 and below 1
 */
export function normalQuantile(probability: number): number {
  const fromMiddle = probability - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.180625 - fromMiddle ** 2;
    return (
      (fromMiddle * (((59.10937472 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)) /
      (((67.1875636 * r + 78.757757664) * r + 17.895169469) * r + 1)
    );
  }
  const tail = Math.sqrt(-Math.log(fromMiddle < 0 ? probability : 1 - probability));
  const r = tail - (tail <= 5 ? 1.6 : 5);
  const size =
    tail <= 5
      ? (((0.17023821103 * r + 1.3067284816) * r + 2.75681539) * r + 1.4234372777) / ((0.12021132975 * r + 0.737001642) * r + 1)
      : (((0.017337203997 * r + 0.42868294337) * r + 3.081226386) * r + 6.657905115) / ((0.012258202635 * r + 0.24197894225) * r + 1);
  return Math.sign(fromMiddle) * size;
}

/**
 * So many draws of normal variables side by side, the same every time, by a Latin hypercube (M. D. McKay, R. J. Beckman and
 * W. J. Conover, Technometrics 21, 1979, 239): of each variable one value from the middle of every one of `count` equally
 * likely stretches, shuffled against the others. What depends on one variable, or on a sum, is met far better than by
 * as many independent draws.
 *
 * @returns a row for each variable
 */
export function normalHypercube(variables: number, count: number): number[][] {
  const next = uniformDraws();
  const stretches = Array.from({ length: count }, (_, stretch) => normalQuantile((stretch + 0.5) / count));
  return Array.from({ length: variables }, () => {
    const values = [...stretches];
    for (let last = count - 1; last > 0; last--) {
      const other = Math.floor(next() * (last + 1));
      [values[last], values[other]] = [values[other] ?? 0, values[last] ?? 0];
    }
    return values;
  });
}

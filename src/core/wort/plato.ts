import { BrewingError } from "../brewing-error";

/** Powers of SG − 1 in degrees Plato, from the first on: see `platoFromGravity`. */
export const platoPowers = [258.6, -226.12, 175.45] as const;
const [first, second, third] = platoPowers;

/**
 * Extract of a wort from its specific gravity: the mass of dissolved sugar in 100 g, as degrees Plato.
 *
 * Least-squares cubic through NBS Circular 440 (Bates et al. 1942), Table 114, apparent specific gravity 20/20 °C
 * of sucrose solutions, 0 to 40 °Bx; exactly 0 at 1.000, worst misfit 0.0051 °P including the table's rounding.
 * Below 1.000 (finished dry beer) the same curve is carried on and gives a negative apparent extract.
 *
 * @param gravity specific gravity 20/20 °C, 0.98 to 1.2
 * @returns °P
 */
export function platoFromGravity(gravity: number): number {
  const x = gravity - 1;
  return first * x + second * x * x + third * x ** 3;
}

/**
 * Specific gravity 20/20 °C from extract: the inverse of `platoFromGravity` by Newton's method, to 1e-12.
 *
 * @param plato °P, -6 to 45
 * @throws BrewingError "unsolvable" when no gravity belongs to the number
 */
export function gravityFromPlato(plato: number): number {
  let x = plato / first;
  for (let step = 0; step < 20; step += 1) {
    const correction = (platoFromGravity(1 + x) - plato) / (first + 2 * second * x + 3 * third * x * x);
    x -= correction;
    if (Math.abs(correction) < 1e-14) return 1 + x;
  }
  throw new BrewingError("unsolvable", `no specific gravity belongs to ${plato} °P`);
}

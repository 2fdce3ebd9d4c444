/**
 * The root of a rising function between two bounds, by halving: slow and sure, to the last digit that a double holds.
 * The caller sees to it that `rising(lower) <= 0 <= rising(upper)`.
 */
export function bisect(rising: (x: number) => number, lower: number, upper: number): number {
  for (let step = 0; step < 60; step += 1) {
    const middle = (lower + upper) / 2;
    if (rising(middle) < 0) lower = middle;
    else upper = middle;
  }
  return (lower + upper) / 2;
}

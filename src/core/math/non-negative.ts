import { inverseOfPositiveDefinite } from "./linear";

const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, index) => sum + value * (other[index] ?? 0), 0);

/** Least squares over some of the columns, with no bounds; undefined where they say the same. */
function freeSolution(columns: readonly (readonly number[])[], wanted: readonly number[], chosen: readonly number[]): number[] | undefined {
  const some = chosen.map((index) => columns[index] ?? []);
  const inverse = inverseOfPositiveDefinite(some.map((one) => some.map((other) => dot(one, other))));
  const against = some.map((column) => dot(column, wanted));
  return inverse?.map((row) => dot(row, against));
}

/**
 * The amounts x ≥ 0 for which Σ x × column comes nearest to what is wanted, by least squares (C. L. Lawson and R. J. Hanson,
 * Solving Least Squares Problems, 1974, ch. 23, algorithm NNLS): the column that would help most joins, and where an
 * amount would fall below nought it leaves again. Columns that say what others say already stay at 0.
 */
export function nonNegativeLeastSquares(columns: readonly (readonly number[])[], wanted: readonly number[]): number[] {
  let amounts = columns.map(() => 0);
  let chosen: number[] = [];
  let barred: number[] = [];
  const slack = 1e-5 * Math.sqrt(dot(wanted, wanted));
  // Each round lowers the sum of squares, so that no choice comes twice; the bound is for rounding alone.
  for (let round = 0; round < 30 * columns.length; round++) {
    const rest = wanted.map((value, row) => value - columns.reduce((sum, column, at) => sum + (column[row] ?? 0) * (amounts[at] ?? 0), 0));
    // How much a little of each column would help, in a measure that does not go by its unit.
    const help = columns.map((column, at) =>
      chosen.includes(at) || barred.includes(at) ? 0 : dot(column, rest) / Math.sqrt(dot(column, column) || 1),
    );
    const most = Math.max(0, ...help);
    if (most <= slack) return amounts;
    const best = help.indexOf(most);
    chosen = [...chosen, best];
    for (let step = 0; step < 1;) {
      const solution = freeSolution(columns, wanted, chosen);
      if (solution === undefined) {
        barred.push(best);
        chosen = chosen.filter((at) => at !== best);
        break;
      }
      const then = columns.map((_, at) => solution[chosen.indexOf(at)] ?? 0);
      const before = amounts;
      // As far towards the solution as the first amount that comes to nought allows.
      step = Math.min(1, ...before.map((now, at) => (chosen.includes(at) && !(then[at]! > 0) ? now / (now - then[at]!) || 0 : 1)));
      amounts = before.map((now, at) => now + step * (then[at]! - now));
      if (step === 1) barred = [];
      else {
        chosen = chosen.filter((at) => then[at]! > 0 || amounts[at]! > 1e-12);
        amounts = amounts.map((amount, at) => (chosen.includes(at) ? amount : 0));
      }
    }
  }
  return amounts;
}

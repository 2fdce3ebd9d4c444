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
  const barred = new Set<number>();
  const slack = 1e-10 * dot(wanted, wanted);
  // Each round lowers the sum of squares, so that no choice comes twice; the bound is for rounding alone.
  for (let round = 0; round < 30 * columns.length; round++) {
    const rest = wanted.map(
      (value, row) => value - columns.reduce((sum, column, index) => sum + (column[row] ?? 0) * (amounts[index] ?? 0), 0),
    );
    // How much the rest shrinks with a little of each, in a measure that does not go by its unit.
    const help = (index: number): number =>
      dot(columns[index] ?? [], rest) / Math.sqrt(dot(columns[index] ?? [], columns[index] ?? []) || 1);
    const others = columns.map((_, index) => index).filter((index) => !chosen.includes(index) && !barred.has(index));
    const best = others.reduce((most, index) => (help(index) > help(most) ? index : most), others[0] ?? -1);
    if (best < 0 || help(best) <= 0 || help(best) ** 2 <= slack) return amounts;
    let tried = [...chosen, best];
    for (;;) {
      const solution = freeSolution(columns, wanted, tried);
      if (solution === undefined) {
        barred.add(best);
        break;
      }
      if (solution.every((value) => value > 0)) {
        chosen = tried;
        amounts = columns.map((_, index) => solution[tried.indexOf(index)] ?? 0);
        barred.clear();
        break;
      }
      // As far towards the solution as the first amount that comes to nought allows.
      const step = Math.min(
        ...tried.map((index, at) => {
          const [now, then] = [amounts[index] ?? 0, solution[at] ?? 0];
          return then > 0 ? 1 : now / (now - then || 1);
        }),
      );
      const before = amounts;
      amounts = columns.map((_, index) => {
        const at = tried.indexOf(index);
        return at < 0 ? 0 : (before[index] ?? 0) + step * ((solution[at] ?? 0) - (before[index] ?? 0));
      });
      const kept = tried.filter((index, at) => (solution[at] ?? 0) > 0 || (amounts[index] ?? 0) > 1e-12);
      amounts = amounts.map((value, index) => (kept.includes(index) ? Math.max(0, value) : 0));
      if (kept.length === tried.length || kept.length === 0) return amounts;
      tried = kept;
    }
    if (barred.has(best)) continue;
  }
  return amounts;
}

const at = (rows: readonly (readonly number[])[], row: number, column: number): number => rows[row]?.[column] ?? 0;

/**
 * Cholesky's factor of a symmetric positive definite matrix, the lower triangle L with LLᵀ the matrix (any text on
 * numerical linear algebra), or undefined where rounding leaves nothing of a pivot: then some columns say the same and
 * nothing can be told apart.
 */
export function choleskyFactor(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const lower: number[][] = matrix.map((row) => row.map(() => 0));
  for (let row = 0; row < matrix.length; row++) {
    for (let column = 0; column <= row; column++) {
      let rest = at(matrix, row, column);
      for (let k = 0; k < column; k++) rest -= at(lower, row, k) * at(lower, column, k);
      if (row === column && !(rest > 1e-13 * at(matrix, row, row))) return undefined;
      lower[row]![column] = row === column ? Math.sqrt(rest) : rest / at(lower, column, column);
    }
  }
  return lower;
}

/** Inverse of a symmetric positive definite matrix by Cholesky's factor; undefined where there is none. */
export function inverseOfPositiveDefinite(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const size = matrix.length;
  const lower = choleskyFactor(matrix);
  if (lower === undefined) return undefined;
  const columns = matrix.map((_, unit) => {
    const forward: number[] = [];
    for (let row = 0; row < size; row++) {
      const known = forward.reduce((sum, value, k) => sum + at(lower, row, k) * value, 0);
      forward.push(((row === unit ? 1 : 0) - known) / at(lower, row, row));
    }
    const solution = new Array<number>(size).fill(0);
    for (let row = size - 1; row >= 0; row--) {
      let known = 0;
      for (let k = row + 1; k < size; k++) known += at(lower, k, row) * (solution[k] ?? 0);
      solution[row] = ((forward[row] ?? 0) - known) / at(lower, row, row);
    }
    return solution;
  });
  return columns;
}

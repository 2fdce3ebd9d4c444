import { address, block, type Block } from "./addresses";

/**
 * Joins cells that are to look alike into few rectangles: first down each column, then across columns of equal height.
 * One formatting call serves a rectangle.
 */
export function rectangles(addresses: readonly string[]): string[] {
  const columns = new Map<number, number[]>();
  for (const cell of addresses) {
    const { from, to } = block(cell);
    for (let column = from.column; column <= to.column; column += 1) {
      const rows = columns.get(column) ?? [];
      for (let row = from.row; row <= to.row; row += 1) rows.push(row);
      columns.set(column, rows);
    }
  }
  const runs: Block[] = [...columns]
    .sort(([a], [b]) => a - b)
    .flatMap(([column, rows]) =>
      runsOf([...new Set(rows)].sort((a, b) => a - b)).map(([from, to]) => ({ from: { row: from, column }, to: { row: to, column } })),
    );
  const joined: Block[] = [];
  for (const run of runs) {
    const neighbour = joined.findIndex(
      ({ from, to }) => from.row === run.from.row && to.row === run.to.row && to.column + 1 === run.from.column,
    );
    const found = joined[neighbour];
    if (found) joined[neighbour] = { from: found.from, to: run.to };
    else joined.push(run);
  }
  return joined.map(({ from, to }) =>
    from.row === to.row && from.column === to.column
      ? address(from.row, from.column)
      : `${address(from.row, from.column)}:${address(to.row, to.column)}`,
  );
}

/** Rising numbers as runs of neighbours, each by its first and last. */
export function runsOf(rows: readonly number[]): [number, number][] {
  const runs: [number, number][] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last && last[1] + 1 === row) last[1] = row;
    else runs.push([row, row]);
  }
  return runs;
}

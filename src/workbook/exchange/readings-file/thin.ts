import type { LogRow } from "./read-log";

/** So many stretches of equal time; of each, the row in the middle of its gravities stands for it. */
const stretches = 120;

/**
 * The few rows that a sheet has room for, chosen so that they keep the course: the first, the last, the one a day before
 * the last (whether it is over depends on it), then always the one furthest from the line between those chosen.
 * Every row chosen is a reading of the file, none is an average.
 */
export function thinned(rows: readonly LogRow[], most: number): LogRow[] {
  if (rows.length <= most) return [...rows];
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last || most < 1) return [];
  if (most === 1) return [last];
  const dayBefore = rows.findLast(({ when }) => when <= last.when - 1);
  const chosen = new Set<LogRow>([last, first, ...(dayBefore && most > 2 ? [dayBefore] : [])]);
  const candidates = typical(rows, first.when, last.when);
  while (chosen.size < most) {
    const line = [...chosen].sort((a, b) => a.when - b.when);
    const furthest = candidates
      .filter((row) => !chosen.has(row))
      .reduce<{ row: LogRow; distance: number } | undefined>((best, row) => {
        const distance = distanceFrom(line, row);
        return best && best.distance >= distance ? best : { row, distance };
      }, undefined);
    if (!furthest) break;
    chosen.add(furthest.row);
  }
  return [...chosen].sort((a, b) => a.when - b.when);
}

/** One row for each stretch of time: noise of single readings does not choose. */
function typical(rows: readonly LogRow[], from: number, to: number): LogRow[] {
  const bins = new Map<number, LogRow[]>();
  for (const row of rows) {
    const bin = Math.min(stretches - 1, Math.floor(((row.when - from) / (to - from || 1)) * stretches));
    bins.set(bin, [...(bins.get(bin) ?? []), row]);
  }
  return [...bins.values()]
    .map((bin) => [...bin].sort((a, b) => a.gravity - b.gravity)[Math.floor(bin.length / 2)])
    .filter((row) => row !== undefined);
}

function distanceFrom(line: readonly LogRow[], { when, gravity }: LogRow): number {
  const after = line.findIndex((row) => row.when >= when);
  const [left, right] = [line[Math.max(0, after - 1)], line[after]];
  if (!left || !right || right.when === left.when) return 0;
  return Math.abs(left.gravity + ((right.gravity - left.gravity) * (when - left.when)) / (right.when - left.when) - gravity);
}

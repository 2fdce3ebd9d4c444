import type { IRange } from "@univerjs/core";

export const overlap = (one: IRange, other: IRange): boolean =>
  one.startRow <= other.endRow && one.endRow >= other.startRow && one.startColumn <= other.endColumn && one.endColumn >= other.startColumn;

/** What is left of a range when a hole is cut into it: up to four ranges, above, left, right and below. */
export function without(range: IRange, hole: IRange): IRange[] {
  if (!overlap(range, hole)) return [range];
  const startRow = Math.max(range.startRow, hole.startRow);
  const endRow = Math.min(range.endRow, hole.endRow);
  return [
    { ...range, endRow: hole.startRow - 1 },
    { ...range, startRow, endRow, endColumn: hole.startColumn - 1 },
    { ...range, startRow, endRow, startColumn: hole.endColumn + 1 },
    { ...range, startRow: hole.endRow + 1 },
  ].filter((part) => part.startRow <= part.endRow && part.startColumn <= part.endColumn);
}

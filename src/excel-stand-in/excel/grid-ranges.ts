import type { IRange } from "@univerjs/core";
import type { Block } from "./address";
import type { SheetBlock } from "./cell-writer";

export const toGridRange = ({ row, column, rowCount, columnCount }: Block): IRange => ({
  startRow: row,
  startColumn: column,
  endRow: row + rowCount - 1,
  endColumn: column + columnCount - 1,
});

export const fromGridRange = (sheetId: string, { startRow, startColumn, endRow, endColumn }: IRange): SheetBlock => ({
  sheetId,
  row: startRow,
  column: startColumn,
  rowCount: endRow - startRow + 1,
  columnCount: endColumn - startColumn + 1,
});

/** What both cover, if anything. */
export function sharedBlock(one: Block, other: Block): Block | undefined {
  const [row, column] = [Math.max(one.row, other.row), Math.max(one.column, other.column)];
  const rowCount = Math.min(one.row + one.rowCount, other.row + other.rowCount) - row;
  const columnCount = Math.min(one.column + one.columnCount, other.column + other.columnCount) - column;
  return rowCount > 0 && columnCount > 0 ? { row, column, rowCount, columnCount } : undefined;
}

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

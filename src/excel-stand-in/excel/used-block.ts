import type { Block } from "./address";
import { fromGridRange, sharedBlock } from "./grid-ranges";
import type { Host } from "./host";

/** The smallest block that holds everything on a sheet, or in a part of it, spills included; undefined if there is nothing. */
export function usedBlock(host: Host, sheetId: string, valuesOnly: boolean, within?: Block): Block | undefined {
  let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
  const include = (row: number, column: number): void => {
    if (within && !holds(within, row, column)) return;
    [top, left, bottom, right] = [Math.min(top, row), Math.min(left, column), Math.max(bottom, row), Math.max(right, column)];
  };
  host
    .gridSheet(sheetId)
    .getCellMatrix()
    .forValue((row, column, cell) => {
      const filled = cell != null && ((cell.v != null && cell.v !== "") || cell.f || cell.si || cell.p);
      if (filled || (!valuesOnly && cell?.s)) include(row, column);
    });
  for (const spill of host.engine.spills.extents(host.unitId, sheetId)) {
    const block = fromGridRange(sheetId, spill);
    const part = within ? sharedBlock(block, within) : block;
    if (!part) continue;
    include(part.row, part.column);
    include(part.row + part.rowCount - 1, part.column + part.columnCount - 1);
  }
  return bottom < 0 ? undefined : { row: top, column: left, rowCount: bottom - top + 1, columnCount: right - left + 1 };
}

const holds = (block: Block, row: number, column: number): boolean =>
  row >= block.row && row < block.row + block.rowCount && column >= block.column && column < block.column + block.columnCount;

import type { Block } from "./address";
import type { Host } from "./host";

/** The smallest block that holds everything on a sheet, spills included; undefined for an empty sheet. */
export function usedBlock(host: Host, sheetId: string, valuesOnly: boolean): Block | undefined {
  let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
  const include = (row: number, column: number): void => {
    [top, left, bottom, right] = [Math.min(top, row), Math.min(left, column), Math.max(bottom, row), Math.max(right, column)];
  };
  host.gridSheet(sheetId).getCellMatrix().forValue((row, column, cell) => {
    const filled = cell != null && (cell.v != null && cell.v !== "" || cell.f || cell.si || cell.p);
    if (filled || (!valuesOnly && cell?.s)) include(row, column);
  });
  for (const spill of host.engine.spills.extents(host.unitId, sheetId)) {
    include(spill.startRow, spill.startColumn);
    include(spill.endRow, spill.endColumn);
  }
  return bottom < 0 ? undefined : { row: top, column: left, rowCount: bottom - top + 1, columnCount: right - left + 1 };
}

import {
  CellValueType,
  ICommandService,
  type ICellData,
  type IObjectMatrixPrimitiveType,
  type Injector,
  type Nullable,
} from "@univerjs/core";
import { ISuperTableService } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { isTooDeep } from "./formula-depth";
import { expandThisRow } from "./structured-references";

interface SetValues {
  unitId: string;
  subUnitId: string;
  cellValue?: IObjectMatrixPrimitiveType<Nullable<ICellData>>;
}

/**
 * What every formula goes through on its way into a cell, whether typed, pasted or written by a program: `[@Mass]` is written out, and one
 * that is nested beyond what can be read (Excel takes 64 functions in one another) stays the text that it is.
 */
export function expandOnEntry(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== SetRangeValuesMutation.id) return;
    const { unitId, subUnitId, cellValue } = command.params as SetValues;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      for (const [column, cell] of Object.entries((cells ?? {}) as Record<string, Nullable<ICellData>>)) {
        if (typeof cell?.f !== "string") continue;
        if (isTooDeep(cell.f)) Object.assign(cell, { v: cell.f, t: CellValueType.STRING, f: null, si: null });
        else if (cell.f.includes("@")) cell.f = expandThisRow(cell.f, tableAt(injector, unitId, subUnitId, Number(row), Number(column)));
      }
    }
  });
}

function tableAt(injector: Injector, unitId: string, sheetId: string, row: number, column: number): string | undefined {
  for (const [name, table] of injector.get(ISuperTableService).getTableMap(unitId) ?? []) {
    const { startRow, endRow, startColumn, endColumn } = table.range;
    if (table.sheetId === sheetId && row >= startRow && row <= endRow && column >= startColumn && column <= endColumn) return name;
  }
  return undefined;
}

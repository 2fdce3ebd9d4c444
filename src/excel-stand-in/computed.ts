import type { ICellData, IRange, IWorkbookData, Nullable } from "@univerjs/core";
import type { Engine } from "./engine/engine";
import { cachedValueOf, type ComputedSheet, type ComputedValues } from "./xlsx/computed-values";

/** The results that a file keeps beside its formulas: those of every formula cell, and every spill with its extent. */
export function collectComputed(engine: Engine, snapshot: IWorkbookData): ComputedValues {
  const computed: ComputedValues = {};
  for (const [sheetId, sheet] of Object.entries(snapshot.sheets)) {
    const result: ComputedSheet = { values: {}, spills: engine.spills.extents(snapshot.id, sheetId).filter(isMoreThanOneCell) };
    const take = (row: number, column: number) => {
      (result.values[row] ??= {})[column] = cachedValueOf(engine.spills.valueAt(snapshot.id, sheetId, row, column));
    };
    for (const [row, cells] of Object.entries(sheet.cellData ?? {})) {
      for (const [column, cell] of Object.entries((cells ?? {}) as Record<string, Nullable<ICellData>>)) {
        if (hasFormula(cell)) take(Number(row), Number(column));
      }
    }
    for (const { startRow, endRow, startColumn, endColumn } of result.spills) {
      for (let row = startRow; row <= endRow; row++) for (let column = startColumn; column <= endColumn; column++) take(row, column);
    }
    computed[sheetId] = result;
  }
  return computed;
}

/** A copied formula may be stored as the number of the one that it was copied from. */
const hasFormula = (cell: Nullable<ICellData>): boolean => Boolean(cell?.f) || Boolean(cell?.si);

const isMoreThanOneCell = (block: IRange): boolean => block.endRow > block.startRow || block.endColumn > block.startColumn;

import type { IRange } from "@univerjs/core";
import { within } from "./range-tree";

type Sheet<T> = Map<number, Map<number, T>>;

/** Something by cell, for all workbooks and sheets. */
export class CellIndex<T> {
  private readonly sheets = new Map<string, Map<string, Sheet<T>>>();

  get(unitId: string, sheetId: string, row: number, column: number): T | undefined {
    return this.sheets.get(unitId)?.get(sheetId)?.get(row)?.get(column);
  }

  set(unitId: string, sheetId: string, row: number, column: number, value: T): void {
    const unit = fetched(this.sheets, unitId, () => new Map<string, Sheet<T>>());
    fetched(
      fetched(unit, sheetId, () => new Map()),
      row,
      () => new Map<number, T>(),
    ).set(column, value);
  }

  delete(unitId: string, sheetId: string, row: number, column: number): void {
    this.sheets.get(unitId)?.get(sheetId)?.get(row)?.delete(column);
  }

  *inRange(unitId: string, sheetId: string, { startRow, endRow, startColumn, endColumn }: IRange): Generator<T> {
    for (const columns of within(this.sheets.get(unitId)?.get(sheetId), startRow, endRow)) yield* within(columns, startColumn, endColumn);
  }

  *ofSheet(unitId: string, sheetId: string): Generator<T> {
    for (const columns of this.sheets.get(unitId)?.get(sheetId)?.values() ?? []) yield* columns.values();
  }

  *places(): Generator<[unitId: string, sheetId: string]> {
    for (const [unitId, sheets] of this.sheets) for (const sheetId of sheets.keys()) yield [unitId, sheetId];
  }

  clear(): void {
    this.sheets.clear();
  }
}

function fetched<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) map.set(key, (value = make()));
  return value;
}

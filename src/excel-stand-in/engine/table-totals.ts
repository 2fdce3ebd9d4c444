import type { IRange, Injector } from "@univerjs/core";
import { ISuperTableService } from "@univerjs/engine-formula";

type Table = Parameters<ISuperTableService["registerTable"]>[2];

/** A table as the engine knows it, with what it does not know; fast-properties-loader.cjs asks for it. */
export type TableWithTotals = Table & { hasTotals?(): boolean };

/** Whether the table that fills this range has a row of totals below it. Whoever keeps that says so. */
export type HasTotals = (unitId: string, sheetId: string, range: IRange) => boolean;

/** The grid's tables end with their data; Table[#All] and Table[#Totals] need the row below. Call before the first workbook. */
export function tellTotals(injector: Injector, hasTotals: HasTotals): void {
  const tables = injector.get(ISuperTableService);
  const register = tables.registerTable.bind(tables);
  tables.registerTable = (unitId, name, table) => {
    const told: TableWithTotals = { ...table, hasTotals: () => hasTotals(unitId, table.sheetId, table.range) };
    register(unitId, name, told);
  };
}

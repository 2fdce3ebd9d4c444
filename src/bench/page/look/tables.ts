import type { Injector } from "@univerjs/core";
import { RangeThemeStyle, SheetRangeThemeModel } from "@univerjs/sheets";
import { TableManager, UniverSheetsTablePlugin, UniverSheetsTableUIPlugin } from "@univerjs/preset-sheets-table";
import type { SheetExtras } from "../../../excel-stand-in/excel/sheet-extras";

/** The grid's tables without the tab that it lays over the row above the heading. */
export const quietTables = () => ({ plugins: [UniverSheetsTablePlugin, [UniverSheetsTableUIPlugin, { hideAnchor: true }]] as never });

/**
 * The grid dresses every table in bright blue bands and puts a filter button on each heading. Our sheets bring their
 * own look, as they do in Excel, and say with each table whether it is to have filter buttons.
 */
export function dressTables(injector: Injector, extrasOf: (unitId: string, sheetId: string) => SheetExtras | undefined): void {
  injector
    .get(SheetRangeThemeModel)
    .registerDefaultRangeTheme(new RangeThemeStyle("table-default-0", { headerRowStyle: { cl: { rgb: "#1D1B16" } } }));
  const tables = injector.get(TableManager);
  const withFilters = tables.getSheetFilterRangeWithState.bind(tables);
  tables.getSheetFilterRangeWithState = (unitId, sheetId) =>
    withFilters(unitId, sheetId).filter(({ tableId }) => extrasOf(unitId, sheetId)?.tables?.[tableId]?.showFilterButton !== false);
}

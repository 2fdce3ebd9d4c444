import { IUniverInstanceService, UniverInstanceType, type ICellDataWithSpanAndDisplay, type IRange, type Workbook } from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { Engine } from "../../excel-stand-in/engine/engine";

/**
 * The text that goes to other programs had nothing in the place of spilled cells. Within the grid they are copied as
 * Excel does it: with the formula that they come from they come anew, without it they become values.
 */
export function copySpills({ injector, spills }: Engine): void {
  let copied: { unitId: string; sheetId: string; range: IRange } | undefined;
  injector.get(ISheetClipboardService).addClipboardHook({
    id: "bench-copy-spills",
    onBeforeCopy: (unitId, sheetId, range) => {
      copied = { unitId, sheetId, range };
    },
    getCellValueBySpecialMatrix: (row: number, column: number) => {
      const spill = copied && spills.extentAt(copied.unitId, copied.sheetId, row, column);
      if (!copied || !spill || (row === spill.startRow && column === spill.startColumn)) return undefined;
      const value = spills.valueAt(copied.unitId, copied.sheetId, row, column);
      const sheet = injector
        .get(IUniverInstanceService)
        .getUnit<Workbook>(copied.unitId, UniverInstanceType.UNIVER_SHEET)
        ?.getSheetBySheetId(copied.sheetId);
      const look = sheet?.getCellRaw(row, column)?.s;
      const text = typeof value === "boolean" ? String(value).toUpperCase() : String(value ?? "");
      const cell: ICellDataWithSpanAndDisplay = { ...(look ? { s: look } : {}), displayV: text };
      const { startRow, endRow, startColumn, endColumn } = copied.range;
      const withFormula =
        spill.startRow >= startRow && spill.startRow <= endRow && spill.startColumn >= startColumn && spill.startColumn <= endColumn;
      return withFormula || value === null ? cell : { ...cell, v: value };
    },
  });
}

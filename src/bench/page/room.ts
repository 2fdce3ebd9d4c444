import { ICommandService, type Injector, type IWorkbookData } from "@univerjs/core";
import { InsertSheetMutation } from "@univerjs/sheets";

/** The grid ends where a sheet says, and nothing can be typed beyond. To column IV and row 1000 there is always room. */
const least = { rowCount: 1000, columnCount: 256 };

interface Size {
  rowCount?: number;
  columnCount?: number;
}

function widened<Sheet extends Size>(sheet: Sheet): Sheet {
  return {
    ...sheet,
    rowCount: Math.max(least.rowCount, sheet.rowCount ?? 0),
    columnCount: Math.max(least.columnCount, sheet.columnCount ?? 0),
  };
}

export const withRoom = (workbook: IWorkbookData): IWorkbookData => ({
  ...workbook,
  sheets: Object.fromEntries(Object.entries(workbook.sheets).map(([id, sheet]) => [id, widened(sheet)])),
});

/** For sheets that are added, by hand or by the pane. */
export function giveRoomToNewSheets(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== InsertSheetMutation.id) return;
    const parameters = command.params as { sheet: Size };
    parameters.sheet = widened(parameters.sheet);
  });
}

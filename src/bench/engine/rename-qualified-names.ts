import { IUniverInstanceService, UniverInstanceType, type IMutationInfo, type Injector, type Workbook } from "@univerjs/core";
import { SetRangeValuesMutation, SetWorksheetNameCommand, SheetInterceptorService } from "@univerjs/sheets";
import { renameSheet, splitFormula, unquoteSheet } from "./formula-text";

/**
 * When a sheet is renamed the grid rewrites cell references to it, but not names written with their sheet
 * ('Batch 1'!og). This adds those to the same step, so that one undo takes both back.
 */
export function renameQualifiedNames(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: (command) => {
      if (command.id !== SetWorksheetNameCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId, name } = command.params as { unitId: string; subUnitId: string; name: string };
      const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
      const oldName = workbook?.getSheetBySheetId(subUnitId)?.getName();
      if (!workbook || oldName === undefined) return { redos: [], undos: [] };
      return {
        redos: changes(workbook, oldName, (formula) => renameSheet(formula, oldName, name)),
        undos: changes(workbook, oldName, (formula) => formula),
      };
    },
  });
}

function changes(workbook: Workbook, sheetName: string, rewrite: (formula: string) => string): IMutationInfo[] {
  return workbook.getSheets().flatMap((sheet) => {
    const cellValue: Record<number, Record<number, { f: string }>> = {};
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (cell?.f && usesNameOf(cell.f, sheetName)) (cellValue[row] ??= {})[column] = { f: rewrite(cell.f) };
    });
    if (Object.keys(cellValue).length === 0) return [];
    return [{ id: SetRangeValuesMutation.id, params: { unitId: workbook.getUnitId(), subUnitId: sheet.getSheetId(), cellValue } }];
  });
}

const usesNameOf = (formula: string, sheetName: string): boolean =>
  formula.includes("!") && splitFormula(formula).some((piece) =>
    piece.kind === "name" && piece.sheet !== undefined && unquoteSheet(piece.sheet).toLowerCase() === sheetName.toLowerCase());

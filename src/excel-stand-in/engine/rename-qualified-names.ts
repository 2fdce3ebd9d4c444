import { IUniverInstanceService, UniverInstanceType, type IMutationInfo, type Injector, type Workbook } from "@univerjs/core";
import { RemoveSheetCommand, SetRangeValuesMutation, SetWorksheetNameCommand, SheetInterceptorService } from "@univerjs/sheets";
import { renameSheet, splitFormula, type FormulaPiece } from "./formula-text";

/**
 * When a sheet is renamed or deleted the grid rewrites cell references to it, but not names written with their sheet
 * ('Batch 1'!og). This adds those to the same step, so that one undo takes both back. A deleted sheet's names become
 * #REF!, as in Excel: a sheet that is called the same later is another one.
 */
export function renameQualifiedNames(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: (command) => {
      const renamed = command.id === SetWorksheetNameCommand.id;
      if (!renamed && command.id !== RemoveSheetCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId, name } = command.params as { unitId: string; subUnitId: string; name: string };
      const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
      const oldName = workbook?.getSheetBySheetId(subUnitId)?.getName();
      if (!workbook || oldName === undefined) return { redos: [], undos: [] };
      return {
        redos: changes(workbook, oldName, (formula) => (renamed ? renameSheet(formula, oldName, name) : loseNames(formula, oldName))),
        undos: changes(workbook, oldName, (formula) => formula),
      };
    },
  });
}

const loseNames = (formula: string, sheetName: string): string =>
  splitFormula(formula)
    .map((piece) => (isNameOf(piece, sheetName) ? "#REF!" : piece.source))
    .join("");

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
  formula.includes("!") && splitFormula(formula).some((piece) => isNameOf(piece, sheetName));

const isNameOf = (piece: FormulaPiece, sheetName: string): boolean =>
  piece.kind === "name" && piece.sheet !== undefined && piece.sheet.toLowerCase() === sheetName.toLowerCase();

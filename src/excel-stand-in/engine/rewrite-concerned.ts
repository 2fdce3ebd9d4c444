import type { Injector } from "@univerjs/core";
import { UpdateFormulaController } from "@univerjs/sheets-formula";

/** All formulas of a workbook as the engine holds them: unit, sheet, row, column. */
type BySheet = Record<string, Record<string, ByCell | null | undefined> | null | undefined>;
type ByCell = Record<string, Record<string, { f: string; si?: string } | null | undefined> | null | undefined>;
type SheetIds = Record<string, Record<string, string> | null | undefined>;

interface Move {
  readonly type: number;
  readonly unitId: string;
  readonly sheetId: string;
  readonly targetSheetId?: string;
  readonly oldTableName?: string;
}
interface Rewriting {
  _getFormulaReferenceMoveInfo(formulas: BySheet, sheetIds: SheetIds, move: Move): unknown;
}

/** As the grid numbers them: up to here something moves on a sheet, then the sheet gets another name or goes; above are names and tables. */
const [lastOfMoves, lastOfSheets] = [10, 12];

/**
 * Where rows move, or a sheet or a table gets another name, the grid takes every formula of the workbook apart to see whether it
 * reads it: a quarter of the time that a copy of a batch takes. Here only formulas are taken apart that stand where something moves,
 * or in whose text the sheet's or the table's name stands.
 */
export function rewriteConcerned(injector: Injector): void {
  const controller = injector.get(UpdateFormulaController) as unknown as Rewriting;
  if (typeof controller._getFormulaReferenceMoveInfo !== "function")
    throw new Error("The grid's formulas have changed: references are rewritten elsewhere now.");
  const rewrite = controller._getFormulaReferenceMoveInfo.bind(controller);
  controller._getFormulaReferenceMoveInfo = (formulas, sheetIds, move) =>
    rewrite(move.type > lastOfSheets && !move.oldTableName ? formulas : concerned(formulas, sheetIds, move), sheetIds, move);
}

function concerned(formulas: BySheet, sheetIds: SheetIds, { type, unitId, sheetId, targetSheetId, oldTableName }: Move): BySheet {
  const sheets = new Set([sheetId, targetSheetId]);
  const names = oldTableName
    ? [oldTableName]
    : Object.entries(sheetIds[unitId] ?? {}).flatMap(([name, id]) => (sheets.has(id) ? [name, name.replaceAll("'", "''")] : []));
  const isNamed = ({ f }: { readonly f: string }) => names.some((name) => f.includes(name));
  const isWhole = (id: string) => type <= lastOfMoves && sheets.has(id);
  const found: BySheet = {};
  for (const [unit, bySheet] of Object.entries(formulas)) {
    found[unit] = {};
    for (const [id, byCell] of Object.entries(bySheet ?? {})) {
      if (!byCell) continue;
      found[unit][id] = isWhole(id) ? byCell : rowsOf(byCell, isNamed);
    }
  }
  return found;
}

function rowsOf(byCell: ByCell, isWanted: (formula: { readonly f: string }) => boolean): ByCell {
  const found: ByCell = {};
  for (const row in byCell) {
    for (const column in byCell[row]) {
      const formula = byCell[row][column];
      if (formula && isWanted(formula)) (found[row] ??= {})[column] = formula;
    }
  }
  return found;
}

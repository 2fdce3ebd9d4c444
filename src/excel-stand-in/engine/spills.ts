import {
  CellValueType,
  IUniverInstanceService,
  UniverInstanceType,
  type ICellData,
  type Injector,
  type IRange,
  type Nullable,
  type Workbook,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";

export type CellScalar = number | string | boolean | null;

/**
 * What cells show, spills included. The grid keeps spilled values beside the cells: they are neither in a cell's own
 * value nor in the snapshot. All rows and columns are zero-based.
 */
export class Spills {
  constructor(private readonly injector: Injector) {}

  private get model(): FormulaDataModel {
    return this.injector.get(FormulaDataModel);
  }

  /** The computed value of a cell: its own, or the one that spills into it; null where it is blank. */
  valueAt(unitId: string, sheetId: string, row: number, column: number): CellScalar {
    const spilled = this.model.getArrayFormulaCellData()?.[unitId]?.[sheetId]?.[row]?.[column];
    if (spilled?.v != null) return plainValue(spilled);
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return plainValue(workbook?.getSheetBySheetId(sheetId)?.getCellRaw(row, column));
  }

  /** Every spill of a sheet, as the block it fills; its first cell holds the formula. */
  extents(unitId: string, sheetId: string): IRange[] {
    const byRow = this.model.getArrayFormulaRange()?.[unitId]?.[sheetId] ?? {};
    return Object.values(byRow)
      .flatMap((columns) => Object.values(columns as Record<number, IRange>))
      .filter(Boolean);
  }

  extentAt(unitId: string, sheetId: string, row: number, column: number): IRange | undefined {
    return this.extents(unitId, sheetId).find(
      (block) => row >= block.startRow && row <= block.endRow && column >= block.startColumn && column <= block.endColumn,
    );
  }
}

/** The grid stores TRUE as 1 with a type beside it, and keeps the text of rich text in a document. */
export function plainValue(cell: Nullable<ICellData>): CellScalar {
  if (cell == null) return null;
  if (cell.v == null) return cell.p?.body?.dataStream.replace(/\r\n$/u, "") ?? null;
  if (cell.t === CellValueType.BOOLEAN) return cell.v === true || cell.v === 1 || cell.v === "TRUE";
  return cell.v;
}

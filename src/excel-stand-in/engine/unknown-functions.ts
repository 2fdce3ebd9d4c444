import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type ICellData,
  type IExecutionOptions,
  type Injector,
  type Nullable,
  type Workbook,
} from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import type { CellPlace } from "./cell-key";

type Cells = Record<string, Record<string, ICellData | null> | null>;
interface SetValues {
  unitId: string;
  subUnitId: string;
  cellValue?: Cells;
}

const MARK = "enteredUnknown";

/**
 * Formulas that were entered while Excel did not know the add-in's functions: they stay #NAME? when it does, until they are entered
 * again. The mark is kept in the cell, so that it moves with it and is copied with it.
 */
export class UnknownFunctions {
  now = false;
  private everyKnown = true;

  constructor(
    private readonly injector: Injector,
    private readonly namespace: string,
  ) {}

  /** Whether the formula of this cell was entered too early. */
  at({ unitId, sheetId, row, column }: CellPlace): boolean {
    return !this.everyKnown && this.cell(unitId, sheetId, row, column)?.custom?.[MARK] === true;
  }

  /** Once the grid has a workbook: marks what is entered, whoever enters it. */
  follow(): void {
    this.injector.get(ICommandService).beforeCommandExecuted((command, options?: IExecutionOptions & { fromFormula?: boolean }) => {
      if (command.id !== SetRangeValuesMutation.id || options?.fromFormula || (this.everyKnown && !this.now)) return;
      this.everyKnown = false;
      const { unitId, subUnitId, cellValue } = command.params as SetValues;
      for (const [row, cells] of Object.entries(cellValue ?? {})) {
        for (const [column, cell] of Object.entries(cells ?? {})) {
          if (cell && "f" in cell) this.mark(cell, this.cell(unitId, subUnitId, Number(row), Number(column)));
        }
      }
    });
  }

  private mark(entered: ICellData, before: Nullable<ICellData>): void {
    const early = this.now && entered.f?.toUpperCase().includes(`${this.namespace}.`) === true;
    if (!early && !before?.custom?.[MARK]) return;
    entered.custom = { ...before?.custom, ...entered.custom, [MARK]: early };
  }

  private cell(unitId: string, sheetId: string, row: number, column: number): Nullable<ICellData> {
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return workbook?.getSheetBySheetId(sheetId)?.getCellRaw(row, column);
  }
}

import { ICommandService, type IExecutionOptions, type IObjectMatrixPrimitiveType, type Injector } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import type { CellErrors } from "./cell-errors";

interface SetValues {
  unitId: string;
  subUnitId: string;
  cellValue?: IObjectMatrixPrimitiveType<unknown>;
}

/** What a function said about a cell goes when something else is entered there; results come by the same mutation and stay out of it. */
export function forgetErrorsOfEdits(injector: Injector, errors: CellErrors): void {
  injector.get(ICommandService).beforeCommandExecuted((command, options?: IExecutionOptions & { fromFormula?: boolean }) => {
    if (command.id !== SetRangeValuesMutation.id || options?.fromFormula === true) return;
    const { unitId, subUnitId: sheetId, cellValue } = command.params as SetValues;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      for (const column of Object.keys(cells ?? {})) errors.forget({ unitId, sheetId, row: Number(row), column: Number(column) });
    }
  });
}

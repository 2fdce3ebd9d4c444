import { IUniverInstanceService, UniverInstanceType, type ICellData, type Injector, type Nullable, type Workbook } from "@univerjs/core";
import { SetRangeValuesCommand, SetRangeValuesMutation, SheetInterceptorService } from "@univerjs/sheets";
import { customForNewFormula } from "./stored-formula";

type Cells<Item> = Record<number, Record<number, Item>>;
interface SetValues {
  unitId: string;
  subUnitId: string;
  cellValue?: Cells<Nullable<ICellData>>;
}

/** A formula that is typed over another is a new one: how a file had stored the old one is no longer true. One undo brings both back. */
export function forgetHowStored(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: ({ id, params }) => {
      if (id !== SetRangeValuesCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId, cellValue } = params as SetValues;
      const sheet = injector
        .get(IUniverInstanceService)
        .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
        ?.getSheetBySheetId(subUnitId);
      const changes: Cells<ICellData> = {};
      for (const [row, cells] of Object.entries(cellValue ?? {})) {
        for (const [column, typed] of Object.entries((cells ?? {}) as Record<string, Nullable<ICellData>>)) {
          if (!(typed?.f || typed?.si) || typed.custom !== undefined) continue;
          const change = customForNewFormula(sheet?.getCellRaw(Number(row), Number(column)));
          // Without the formula itself the grid would take the change for one that removes it.
          if (change) (changes[Number(row)] ??= {})[Number(column)] = { f: typed.f, si: typed.si, ...change };
        }
      }
      if (Object.keys(changes).length === 0) return { redos: [], undos: [] };
      // The command's own undo puts back every property of the cell, `custom` too.
      return { redos: [{ id: SetRangeValuesMutation.id, params: { unitId, subUnitId, cellValue: changes } }], undos: [] };
    },
  });
}

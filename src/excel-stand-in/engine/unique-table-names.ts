import { ICommandService, IUniverInstanceService, UniverInstanceType, type Injector, type Workbook } from "@univerjs/core";
import { ISuperTableService } from "@univerjs/engine-formula";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { renameTable } from "./structured-references";

const ADD_TABLE = "sheet.mutation.add-table";

interface AddTable {
  unitId: string;
  subUnitId: string;
  tableId: string;
  name: string;
}

/**
 * A table's name is unique in a workbook, but the grid copies a sheet with its tables under the same names, and formulas
 * everywhere would mean the copy. As in Excel the copied table gets a name of its own, and the copied sheet's formulas use it.
 */
export function keepTableNamesUnique(injector: Injector): void {
  const commands = injector.get(ICommandService);
  const renamed = new Map<string, string>();
  commands.beforeCommandExecuted((command) => {
    if (command.id !== ADD_TABLE) return;
    const table = command.params as AddTable;
    const taken = injector.get(ISuperTableService).getTableMap(table.unitId);
    if (!taken || ![...taken.keys()].some((name) => name.toLowerCase() === table.name.toLowerCase())) return;
    renamed.set(table.tableId, table.name);
    table.name = freeName(table.name, taken);
  });
  commands.onCommandExecuted((command) => {
    if (command.id !== ADD_TABLE) return;
    const { unitId, subUnitId, tableId, name } = command.params as AddTable;
    const original = renamed.get(tableId);
    if (original) renameInSheet(injector, unitId, subUnitId, original, name);
  });
}

function freeName(name: string, taken: ReadonlyMap<string, unknown>): string {
  const names = new Set([...taken.keys()].map((one) => one.toLowerCase()));
  let number = 2;
  while (names.has(`${name}${number}`.toLowerCase())) number++;
  return `${name}${number}`;
}

function renameInSheet(injector: Injector, unitId: string, subUnitId: string, from: string, to: string): void {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const cellValue: Record<number, Record<number, { f: string }>> = {};
  workbook
    ?.getSheetBySheetId(subUnitId)
    ?.getCellMatrix()
    .forValue((row, column, cell) => {
      const changed = cell?.f && renameTable(cell.f, from, to);
      if (changed && changed !== cell.f) (cellValue[row] ??= {})[column] = { f: changed };
    });
  if (Object.keys(cellValue).length === 0) return;
  injector.get(ICommandService).syncExecuteCommand(SetRangeValuesMutation.id, { unitId, subUnitId, cellValue });
}

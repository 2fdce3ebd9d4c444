import { ICommandService, type ICellData, type IObjectMatrixPrimitiveType, type IRange } from "@univerjs/core";
import {
  ClearSelectionAllCommand,
  ClearSelectionContentCommand,
  DeleteRangeMoveLeftCommand,
  DeleteRangeMoveUpCommand,
  InsertColCommand,
  InsertRangeMoveDownCommand,
  InsertRangeMoveRightCommand,
  InsertRowCommand,
  RemoveColCommand,
  RemoveRowCommand,
  SetRangeValuesCommand,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { isUnlocked } from "./cell-writer";
import type { Host } from "./host";

interface Target {
  subUnitId?: string;
  range?: IRange;
  ranges?: IRange[];
  value?: ICellData | ICellData[][] | IObjectMatrixPrimitiveType<ICellData>;
  visible?: boolean;
}

/** The page's commands, named because the headless bench does not have them. */
const START_TYPING = "sheet.operation.set-cell-edit-visible";
const PASTE = "univer.command.paste";

const changesCells = new Set<string>([
  SetRangeValuesCommand.id,
  ClearSelectionContentCommand.id,
  ClearSelectionAllCommand.id,
  START_TYPING,
  PASTE,
]);
const changesStructure = new Set<string>([
  InsertRowCommand.id,
  InsertColCommand.id,
  RemoveRowCommand.id,
  RemoveColCommand.id,
  InsertRangeMoveDownCommand.id,
  InsertRangeMoveRightCommand.id,
  DeleteRangeMoveUpCommand.id,
  DeleteRangeMoveLeftCommand.id,
]);

/**
 * Refuses what a person does at the grid to locked cells of a protected sheet; the grid lets its own user do anything.
 * The commands are stopped at the door: the grid's own way, an exception from a listener, leaves the command on its
 * stack, and every later change then counts as set off by it.
 */
export function guardLockedCells(host: Host): void {
  const commands = host.engine.injector.get(ICommandService);
  const [execute, executeAtOnce] = [commands.executeCommand.bind(commands), commands.syncExecuteCommand.bind(commands)];
  commands.executeCommand = async (id, params, options) => (refuses(host, id, params) ? (false as never) : execute(id, params, options));
  commands.syncExecuteCommand = (id, params, options) =>
    refuses(host, id, params) ? (false as never) : executeAtOnce(id, params, options);
}

function refuses(host: Host, commandId: string, params: object | undefined): boolean {
  const structure = changesStructure.has(commandId);
  if (!structure && !changesCells.has(commandId)) return false;
  const target = (params ?? {}) as Target;
  if (commandId === START_TYPING && !target.visible) return false;
  const sheetId = target.subUnitId ?? host.workbook.getActiveSheet().getSheetId();
  if (!host.extras.ofSheet(host.unitId, sheetId).protection) return false;
  return structure || rangesOf(host, target).some((range) => !isOpen(host, sheetId, range));
}

function rangesOf(host: Host, { range, ranges, value }: Target): IRange[] {
  if (ranges) return ranges;
  if (range) return [range];
  const cells = Object.entries((value ?? {}) as Record<string, Record<string, unknown>>).flatMap(([row, columns]) =>
    Object.keys(columns ?? {}).map((column) => ({
      startRow: Number(row),
      endRow: Number(row),
      startColumn: Number(column),
      endColumn: Number(column),
    })),
  );
  return cells.length > 0
    ? cells
    : (host.engine.injector.get(SheetsSelectionsService).getCurrentSelections() ?? []).map((selection) => selection.range);
}

function isOpen(host: Host, sheetId: string, range: IRange): boolean {
  const sheet = host.gridSheet(sheetId);
  for (let row = range.startRow; row <= range.endRow; row++) {
    for (let column = range.startColumn; column <= range.endColumn; column++) if (!isUnlocked(sheet.getCellRaw(row, column))) return false;
  }
  return true;
}

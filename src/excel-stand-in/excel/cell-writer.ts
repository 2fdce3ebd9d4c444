import { ICommandService, IUndoRedoService, type ICellData, type Nullable } from "@univerjs/core";
import { SetRangeValuesMutation, SetRangeValuesUndoMutationFactory, SetStyleCommand } from "@univerjs/sheets";
import { customForNewFormula } from "../engine/stored-formula";
import type { Block } from "./address";
import { accessDenied } from "./errors";
import type { Host } from "./host";

export interface SheetBlock extends Block {
  sheetId: string;
}

export const isUnlocked = (cell: Nullable<ICellData>): boolean => cell?.custom?.["unlocked"] === true;

/** Excel refuses to change locked cells of a protected sheet; the grid does not, so the bench does it here. */
export function assertUnlocked(host: Host, block: SheetBlock): void {
  if (!host.extras.ofSheet(host.unitId, block.sheetId).protection) return;
  const sheet = host.gridSheet(block.sheetId);
  forEachCell(block, (row, column) => {
    if (!isUnlocked(sheet.getCellRaw(row, column))) throw accessDenied();
  });
}

/** Formats are locked for the whole sheet unless protection allows them. */
export function assertFormatsOpen(host: Host, block: SheetBlock): void {
  const protection = host.extras.ofSheet(host.unitId, block.sheetId).protection;
  if (protection && !protection.options.allowFormatCells) throw accessDenied();
}

/**
 * Changes cells by way of the grid's own mutation, so that formulas follow and undo works.
 * @param looksOnly no value changes: nothing has to be calculated
 * @param cellAt what changes in each cell; undefined leaves the cell alone
 */
export function writeCells(
  host: Host,
  block: SheetBlock,
  looksOnly: boolean,
  cellAt: (row: number, column: number) => ICellData | undefined,
): void {
  growSheet(host, block);
  const cellValue: Record<number, Record<number, ICellData>> = {};
  forEachCell(block, (row, column) => {
    const cell = cellAt(row - block.row, column - block.column);
    if (!cell) return;
    const enters = (cell.f || cell.si) && cell.custom === undefined;
    const change = enters ? customForNewFormula(host.gridSheet(block.sheetId).getCellRaw(row, column)) : undefined;
    (cellValue[row] ??= {})[column] = { ...cell, ...change };
  });
  if (Object.keys(cellValue).length === 0) return;
  const params = {
    unitId: host.unitId,
    subUnitId: block.sheetId,
    cellValue,
    ...(looksOnly ? { trigger: SetStyleCommand.id } : {}),
  };
  const { injector } = host.engine;
  const undo = injector.invoke((accessor) => SetRangeValuesUndoMutationFactory(accessor, params));
  injector.get(ICommandService).syncExecuteCommand(SetRangeValuesMutation.id, params);
  injector.get(IUndoRedoService).pushUndoRedo({
    unitID: host.unitId,
    undoMutations: [{ id: SetRangeValuesMutation.id, params: { ...undo, ...(looksOnly ? { trigger: SetStyleCommand.id } : {}) } }],
    redoMutations: [{ id: SetRangeValuesMutation.id, params }],
  });
}

/** Excel's sheets are practically endless; the grid's are made larger when somebody writes beyond them. */
function growSheet(host: Host, block: SheetBlock): void {
  const sheet = host.sheet(block.sheetId);
  if (block.row + block.rowCount > sheet.getMaxRows()) sheet.setRowCount(block.row + block.rowCount + 50);
  if (block.column + block.columnCount > sheet.getMaxColumns()) sheet.setColumnCount(block.column + block.columnCount + 5);
}

export function forEachCell(block: Block, visit: (row: number, column: number) => void): void {
  for (let row = block.row; row < block.row + block.rowCount; row++) {
    for (let column = block.column; column < block.column + block.columnCount; column++) visit(row, column);
  }
}

export const mapCells = <T>(block: Block, read: (row: number, column: number) => T): T[][] =>
  Array.from({ length: block.rowCount }, (_, row) =>
    Array.from({ length: block.columnCount }, (_unused, column) => read(block.row + row, block.column + column)),
  );

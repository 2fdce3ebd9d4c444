import { SetFormulaCalculationResultMutation, type ISetFormulaCalculationResultMutation } from "@univerjs/engine-formula";
import {
  InsertSheetMutation,
  RemoveSheetMutation,
  SetWorksheetActiveOperation,
  SetWorksheetNameMutation,
  SetWorksheetOrderMutation,
  type IInsertSheetMutationParams,
  type IRemoveSheetMutationParams,
  type ISetWorksheetActiveOperationParams,
  type ISetWorksheetNameMutationParams,
  type ISetWorksheetOrderMutationParams,
} from "@univerjs/sheets";
import { cellsText } from "./address";
import type { Command, EventSource } from "./events";

/** The events of worksheets as Excel names them; each tells which sheet it is about. */
export interface SheetEventArguments<Type extends string> {
  type: Type;
  worksheetId: string;
}
type Local<Type extends string> = SheetEventArguments<Type> & { source: "Local" };

/** The parameters of a command, if it is the one asked for. */
const paramsOf = <Params>(command: Command, id: string): Params | undefined => (command.id === id ? (command.params as Params) : undefined);

const list = <T>(one: T | undefined): T[] => (one === undefined ? [] : [one]);

export const sheetAdded: EventSource<Local<"WorksheetAdded">> = {
  after: (_host, command) =>
    list(paramsOf<IInsertSheetMutationParams>(command, InsertSheetMutation.id)).map(({ sheet }) => ({
      type: "WorksheetAdded",
      worksheetId: sheet.id,
      source: "Local",
    })),
};

export const sheetDeleted: EventSource<Local<"WorksheetDeleted">> = {
  after: (_host, command) =>
    list(paramsOf<IRemoveSheetMutationParams>(command, RemoveSheetMutation.id)).map(({ subUnitId }) => ({
      type: "WorksheetDeleted",
      worksheetId: subUnitId,
      source: "Local",
    })),
};

export const sheetActivated: EventSource<SheetEventArguments<"WorksheetActivated">> = {
  after: (_host, command) =>
    list(paramsOf<ISetWorksheetActiveOperationParams>(command, SetWorksheetActiveOperation.id)).map(({ subUnitId }) => ({
      type: "WorksheetActivated",
      worksheetId: subUnitId,
    })),
};

export const sheetDeactivated: EventSource<SheetEventArguments<"WorksheetDeactivated">> = {
  before: (host, command) => (command.id === SetWorksheetActiveOperation.id ? host.workbook.getActiveSheet().getSheetId() : undefined),
  after: (_host, command, _options, before) => {
    const now = paramsOf<ISetWorksheetActiveOperationParams>(command, SetWorksheetActiveOperation.id);
    return now && before !== now.subUnitId ? [{ type: "WorksheetDeactivated", worksheetId: before as string }] : [];
  },
};

export const sheetNameChanged: EventSource<Local<"WorksheetNameChanged"> & { nameBefore: string; nameAfter: string }> = {
  before: (host, command) =>
    list(paramsOf<ISetWorksheetNameMutationParams>(command, SetWorksheetNameMutation.id)).map(({ subUnitId }) =>
      host.sheet(subUnitId).getSheetName(),
    )[0],
  after: (_host, command, _options, before) =>
    list(paramsOf<ISetWorksheetNameMutationParams>(command, SetWorksheetNameMutation.id))
      .filter(({ name }) => name !== before)
      .map(({ subUnitId, name }) => ({
        type: "WorksheetNameChanged",
        worksheetId: subUnitId,
        nameBefore: before as string,
        nameAfter: name,
        source: "Local",
      })),
};

export const sheetMoved: EventSource<Local<"WorksheetMoved"> & { positionBefore: number; positionAfter: number }> = {
  after: (_host, command) =>
    list(paramsOf<ISetWorksheetOrderMutationParams>(command, SetWorksheetOrderMutation.id))
      .filter(({ fromOrder, toOrder }) => fromOrder !== toOrder)
      .map(({ subUnitId, fromOrder, toOrder }) => ({
        type: "WorksheetMoved",
        worksheetId: subUnitId,
        positionBefore: fromOrder,
        positionAfter: toOrder,
        source: "Local",
      })),
};

export const sheetCalculated: EventSource<SheetEventArguments<"WorksheetCalculated"> & { address: string }> = {
  after: (host, command) =>
    list(paramsOf<ISetFormulaCalculationResultMutation>(command, SetFormulaCalculationResultMutation.id))
      .flatMap(({ unitData }) => Object.entries(unitData[host.unitId] ?? {}))
      .map(([worksheetId, cells]) => ({ type: "WorksheetCalculated", worksheetId, address: addressesOf(cells) })),
};

/** The cells of a matrix as one block for each row's run would be long; Excel lists blocks, we the smallest around all. */
function addressesOf(cells: unknown): string {
  const matrix = (
    typeof (cells as { getMatrix?: unknown }).getMatrix === "function" ? (cells as { getMatrix(): object }).getMatrix() : cells
  ) as Record<string, Record<string, unknown>>;
  return blockAddress(matrix) ?? "";
}

/** The smallest block around the cells of a matrix; undefined when there is none. */
export function blockAddress(matrix: Record<string, Record<string, unknown> | undefined> | undefined): string | undefined {
  const rows = Object.keys(matrix ?? {})
    .map(Number)
    .filter((row) => Object.keys(matrix?.[row] ?? {}).length > 0);
  const columns = rows.flatMap((row) => Object.keys(matrix?.[row] ?? {}).map(Number));
  if (columns.length === 0) return undefined;
  const [top, bottom] = [rows.reduce((a, b) => Math.min(a, b)), rows.reduce((a, b) => Math.max(a, b))];
  const [left, right] = [columns.reduce((a, b) => Math.min(a, b)), columns.reduce((a, b) => Math.max(a, b))];
  return cellsText({ row: top, column: left, rowCount: bottom - top + 1, columnCount: right - left + 1 });
}

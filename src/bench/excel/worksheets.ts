import { generateRandomId, type IObjectMatrixPrimitiveType } from "@univerjs/core";
import {
  InsertSheetCommand, InsertSheetMutation, RemoveSheetMutation, SetRangeValuesMutation, SetWorksheetActiveOperation,
  type IInsertSheetMutationParams, type IRemoveSheetMutationParams, type ISetRangeValuesMutationParams, type ISetWorksheetActiveOperationParams,
} from "@univerjs/sheets";
import type { FWorkbook } from "@univerjs/sheets/facade";
import { changesLooksOnly } from "../engine/calculation";
import { cellsText } from "./address";
import { ClientCollection } from "./collection";
import type { Context } from "./context";
import { RichApiError } from "./errors";
import { EventHandlers } from "./events";
import type { StandsFor } from "./standing";
import { Worksheet } from "./worksheet";

type Members = "add" | "getItem" | "getItemOrNullObject" | "getActiveWorksheet" | "getCount" | "getFirst" | "getLast" | "items" | "onActivated" | "onChanged" | "onAdded" | "onDeleted";

/** Stands in for Excel.WorksheetCollection. */
export class WorksheetCollection extends ClientCollection<Worksheet, FWorkbook, Context> implements StandsFor<Excel.WorksheetCollection, Members> {
  readonly onActivated = new EventHandlers<{ type: "WorksheetActivated"; worksheetId: string }>(this.context, (command) =>
    (command.id === SetWorksheetActiveOperation.id
      ? { type: "WorksheetActivated", worksheetId: (command.params as ISetWorksheetActiveOperationParams).subUnitId } : undefined));

  readonly onAdded = new EventHandlers<{ type: "WorksheetAdded"; worksheetId: string; source: "Local" }>(this.context, (command) =>
    (command.id === InsertSheetMutation.id
      ? { type: "WorksheetAdded", worksheetId: (command.params as IInsertSheetMutationParams).sheet.id, source: "Local" } : undefined));

  readonly onDeleted = new EventHandlers<{ type: "WorksheetDeleted"; worksheetId: string; source: "Local" }>(this.context, (command) =>
    (command.id === RemoveSheetMutation.id
      ? { type: "WorksheetDeleted", worksheetId: (command.params as IRemoveSheetMutationParams).subUnitId, source: "Local" } : undefined));

  /** What somebody, or a program, entered; never the results of formulas. */
  readonly onChanged = new EventHandlers<ChangedArguments>(this.context, (command, options) => {
    if (command.id !== SetRangeValuesMutation.id || options?.onlyLocal || changesLooksOnly(command)) return undefined;
    const { subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
    const address = changedAddress(cellValue);
    return address === undefined ? undefined : { type: "WorksheetChanged", worksheetId: subUnitId, address, changeType: "RangeEdited", source: "Local" };
  });

  add(name?: string): Worksheet {
    const id = generateRandomId();
    this.write((workbook) => {
      const taken = workbook.getSheets().some((sheet) => sheet.getSheetName().toLowerCase() === name?.toLowerCase());
      if (taken) throw new RichApiError("ItemAlreadyExists", "A resource with the same name or identifier already exists.");
      const active = workbook.getActiveSheet();
      this.context.host.command(InsertSheetCommand.id, { sheet: { id, name: name ?? freeName(workbook), ...newSheetSize } });
      // Excel leaves the sheet in front that was there; the grid shows the new one.
      if (workbook.getActiveSheet().getSheetId() !== active.getSheetId()) active.activate();
    });
    return this.standIn(() => id);
  }

  getItem(key: string): Worksheet { return this.standIn((workbook) => sheetByKey(workbook, key)); }
  getItemOrNullObject(key: string): Worksheet { return this.standIn((workbook) => sheetByKey(workbook, key), "null"); }
  getActiveWorksheet(): Worksheet { return this.standIn((workbook) => workbook.getActiveSheet().getSheetId()); }
  getFirst(): Worksheet { return this.standIn((workbook) => workbook.getSheets()[0]?.getSheetId()); }
  getLast(): Worksheet { return this.standIn((workbook) => workbook.getSheets().at(-1)?.getSheetId()); }

  protected list(workbook: FWorkbook): Worksheet[] {
    return workbook.getSheets().map((sheet) => this.standIn(() => sheet.getSheetId()));
  }

  private standIn(find: (workbook: FWorkbook) => string | undefined, missing: "throws" | "null" = "throws"): Worksheet {
    return new Worksheet(this.context, { name: "worksheet", missing, find: () => find(this.target) });
  }
}

/** Excel's sheets are far larger; this is room enough for formulas that spill to the right of what was written. */
const newSheetSize = { rowCount: 1000, columnCount: 60 };

interface ChangedArguments {
  type: "WorksheetChanged";
  worksheetId: string;
  address: string;
  changeType: "RangeEdited";
  source: "Local";
}

/** By name or by id; names without regard to case. */
const sheetByKey = (workbook: FWorkbook, key: string): string | undefined =>
  workbook.getSheets().find((sheet) => sheet.getSheetId() === key || sheet.getSheetName().toLowerCase() === key.toLowerCase())?.getSheetId();

function freeName(workbook: FWorkbook): string {
  const taken = new Set(workbook.getSheets().map((sheet) => sheet.getSheetName()));
  let number = 1;
  while (taken.has(`Sheet${number}`)) number++;
  return `Sheet${number}`;
}

function changedAddress(cellValue: IObjectMatrixPrimitiveType<unknown> | undefined): string | undefined {
  const rows = Object.keys(cellValue ?? {}).map(Number);
  const columns = rows.flatMap((row) => Object.keys(cellValue?.[row] ?? {}).map(Number));
  if (rows.length === 0 || columns.length === 0) return undefined;
  const [row, column] = [Math.min(...rows), columns.reduce((a, b) => Math.min(a, b))];
  return cellsText({ row, column, rowCount: Math.max(...rows) - row + 1, columnCount: columns.reduce((a, b) => Math.max(a, b)) - column + 1 });
}

import {
  CopySheetCommand,
  SetWorksheetHideCommand,
  SetWorksheetNameCommand,
  SetWorksheetOrderCommand,
  SetWorksheetShowCommand,
} from "@univerjs/sheets";
import type { Context } from "./context";
import { accessDenied, invalidArgument, itemNotFound } from "./errors";
import type { Host } from "./host";

/** Another worksheet's stand-in, as far as it matters here: the grid's id. */
interface Located {
  target: string;
}

/** Excel refuses to add, delete, rename, move, copy or hide sheets while the workbook's structure is protected. */
export function assertWorkbookOpen(host: Host): void {
  if (host.extras.of(host.unitId).workbookProtection) throw accessDenied("the workbook's structure is protected");
}

export function showOrHide(context: Context, id: string, visibility: Excel.Worksheet["visibility"]): void {
  const { host } = context;
  assertWorkbookOpen(host);
  const hidden = visibility !== "Visible";
  if (hidden && host.workbook.getSheets().every((sheet) => sheet.getSheetId() === id || sheet.isSheetHidden()))
    throw invalidArgument("A workbook must show a sheet.");
  host.extras.update(host.unitId, id, (extras) => {
    delete extras.veryHidden;
    if (visibility === "VeryHidden") extras.veryHidden = true;
  });
  if (host.sheet(id).isSheetHidden() !== hidden)
    host.command(hidden ? SetWorksheetHideCommand.id : SetWorksheetShowCommand.id, { subUnitId: id });
}

export function visibilityOf(host: Host, id: string): Excel.Worksheet["visibility"] {
  if (!host.sheet(id).isSheetHidden()) return "Visible";
  return host.extras.ofSheet(host.unitId, id).veryHidden ? "VeryHidden" : "Hidden";
}

/** Moves a sheet to a place among all sheets, hidden ones counted. */
export function moveSheet(context: Context, id: string, position: number): void {
  assertWorkbookOpen(context.host);
  if (!Number.isInteger(position) || position < 0 || position >= context.host.workbook.getSheets().length)
    throw invalidArgument("There is no such position.");
  context.host.command(SetWorksheetOrderCommand.id, { subUnitId: id, order: position });
}

/** Gives a sheet a name, if Excel would take it. */
export function renameSheet(context: Context, id: string, name: string): void {
  assertWorkbookOpen(context.host);
  const clash = context.host.workbook
    .getSheets()
    .some((sheet) => sheet.getSheetId() !== id && sheet.getSheetName().toLowerCase() === name.toLowerCase());
  if (clash || name === "" || name.length > 31 || /[\\/?*[\]:]/u.test(name))
    throw invalidArgument(`"${name}" cannot be a sheet's name here.`);
  if (context.host.sheet(id).getSheetName() !== name) context.host.command(SetWorksheetNameCommand.id, { subUnitId: id, name });
}

/** Names the copy as Excel does: "Batch 1 (2)". */
export function copySheet(context: Context, id: string, positionType: string, relativeTo: Located | undefined): string {
  assertWorkbookOpen(context.host);
  const { workbook } = context.host;
  const before = new Set(workbook.getSheets().map((sheet) => sheet.getSheetId()));
  const active = workbook.getActiveSheet();
  context.host.command(CopySheetCommand.id, { subUnitId: id });
  const copy = workbook.getSheets().find((sheet) => !before.has(sheet.getSheetId()));
  if (!copy) throw itemNotFound("worksheet");
  const taken = new Set(workbook.getSheets().map((sheet) => sheet.getSheetName()));
  // A long name is cut, so that the ending finds room in Excel's 31 characters.
  const numbered = (number: number): string =>
    context.host
      .sheet(id)
      .getSheetName()
      .slice(0, 31 - ` (${number})`.length) + ` (${number})`;
  let number = 2;
  while (taken.has(numbered(number))) number++;
  renameSheet(context, copy.getSheetId(), numbered(number));
  context.host.command(SetWorksheetOrderCommand.id, {
    subUnitId: copy.getSheetId(),
    order: targetIndex(context, copy.getIndex(), positionType, relativeTo),
  });
  active.activate();
  return copy.getSheetId();
}

function targetIndex(context: Context, index: number, positionType: string, relativeTo: Located | undefined): number {
  const last = context.host.workbook.getSheets().length - 1;
  if (positionType === "Beginning") return 0;
  if (positionType === "End") return last;
  if (!relativeTo) return index;
  const other = context.host.sheet(relativeTo.target).getIndex();
  const after = positionType === "After" ? other + 1 : other;
  return index < after ? after - 1 : after;
}

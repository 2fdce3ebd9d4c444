import { ILayoutService } from "@univerjs/preset-sheets-core";
import type { Engine } from "../../../excel-stand-in/engine/engine";

const sheetName = "Try a formula";
/** The name of every function of ours begins so; with the next letter the grid lists those that fit. */
const firstLetters = "=GYLE.";
const start = { row: 1, column: 1 };

/** Brings a sheet with room to the front, selects a free cell on it and begins a formula there, as if somebody had typed it. */
export function startFormula({ univerAPI, injector }: Engine): void {
  const workbook = univerAPI.getActiveWorkbook()!;
  const sheet = workbook.getSheetByName(sheetName) ?? workbook.insertSheet(sheetName);
  workbook.setActiveSheet(sheet);
  let { row } = start;
  while (hasContent(sheet.getRange(row, start.column).getCellData())) row += 1;
  sheet.getRange(row, start.column).activate();
  injector.get(ILayoutService).focus();
  // What the browser inserts goes the way of what is typed: the grid's hidden field takes it and opens the cell.
  document.execCommand("insertText", false, firstLetters);
}

const hasContent = (cell: { v?: unknown; f?: unknown } | null | undefined): boolean =>
  cell != null && ((cell.v ?? "") !== "" || (cell.f ?? "") !== "");

import { ILayoutService } from "@univerjs/preset-sheets-core";
import type { Engine } from "../../../excel-stand-in/engine/engine";

const sheetName = "Try a formula";
/** The name of every function of ours begins so: once it stands there, the grid lists them. */
const firstLetters = "GYLE.";
/** D2: the guide's first formula and its figures have column B. */
const start = { row: 1, column: 3 };
/** The opened cell lists functions only for what is typed after it has begun to listen: a few frames later. */
const listensAfter = 100;

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
  document.execCommand("insertText", false, "=");
  setTimeout(() => {
    if (workbook.isCellEditing()) document.execCommand("insertText", false, firstLetters);
  }, listensAfter);
}

const hasContent = (cell: { v?: unknown; f?: unknown } | null | undefined): boolean =>
  cell != null && ((cell.v ?? "") !== "" || (cell.f ?? "") !== "");

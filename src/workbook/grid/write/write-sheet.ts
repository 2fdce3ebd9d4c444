import { block, columnLetters, type Block } from "../plan/addresses";
import { cellRange } from "../plan/cell-range";
import { columnWidthPt } from "../plan/print-scale";
import { rowHeightPoints } from "../plan/sheet-builder";
import type { CellPlan, SheetPlan } from "../plan/sheet-plan";
import { writeFormats } from "./write-formats";
import { writeExtras, writeLooks } from "./write-extras";

/**
 * Queues a whole sheet, without a sync of its own: the caller decides when all of it is sent. Nothing that stands in
 * the workbook already is read or touched. Names come before formulas, so that these are understood when they arrive.
 */
export function writeSheet(sheet: Excel.Worksheet, plan: SheetPlan, tableEnding: string): void {
  const { lastRow, lastColumn } = extentOf(plan);
  // Heights come first: rows with a height of their own are not fitted again for each column's width.
  sheet.getRange(`1:${lastRow}`).format.rowHeight = rowHeightPoints;
  for (const { row, points } of plan.rowHeights) sheet.getRange(`${row}:${row}`).format.rowHeight = points;
  plan.columnWidths.forEach((characters, index) => {
    sheet.getRange(`${columnLetters(index + 1)}:${columnLetters(index + 1)}`).format.columnWidth = columnWidthPt(characters);
  });
  writeFormats(sheet, plan);
  for (const { name, range } of plan.names) sheet.names.add(name, sheet.getRange(range));
  sheet.getRange(`A1:${columnLetters(lastColumn)}${lastRow}`).formulas = contentMatrix(plan.cells, {
    from: { row: 1, column: 1 },
    to: { row: lastRow, column: lastColumn },
  });
  for (const { name, range } of plan.tables) {
    const table = sheet.tables.add(range, true);
    table.name = `${name}_${tableEnding}`;
    table.style = "TableStyleLight1";
    table.showBandedRows = false;
    table.showFilterButton = false;
  }
  writeExtras(sheet, plan);
}

/** What rows at the end of a sheet that stands already hold; its names are the caller's. */
export type RowsPlan = Pick<SheetPlan, "cells" | "rowHeights" | "validations" | "notes" | "highlights" | "print">;

/** Queues rows below a sheet that stands already, without a sync of its own; they must be empty. */
export function writeRowsBelow(sheet: Excel.Worksheet, plan: RowsPlan, rows: { readonly from: number; readonly to: number }): void {
  const { lastColumn } = extentOf(plan);
  sheet.getRange(`${rows.from}:${rows.to}`).format.rowHeight = rowHeightPoints;
  for (const { row, points } of plan.rowHeights) sheet.getRange(`${row}:${row}`).format.rowHeight = points;
  writeFormats(sheet, plan);
  sheet.getRange(`A${rows.from}:${columnLetters(lastColumn)}${rows.to}`).formulas = contentMatrix(plan.cells, {
    from: { row: rows.from, column: 1 },
    to: { row: rows.to, column: lastColumn },
  });
  writeLooks(sheet, plan);
  for (const row of plan.print.breaksBeforeRow) sheet.horizontalPageBreaks.add(`A${row}`);
}

/** How far down and to the right a plan goes. */
export function extentOf(plan: Pick<SheetPlan, "cells">): { lastRow: number; lastColumn: number } {
  let lastRow = 1;
  let lastColumn = 1;
  for (const cell of plan.cells) {
    const { to } = block(cellRange(cell));
    lastRow = Math.max(lastRow, to.row);
    lastColumn = Math.max(lastColumn, to.column);
  }
  return { lastRow, lastColumn };
}

/** One matrix for a whole sheet or a block of it: a single write is far quicker than hundreds. */
export function contentMatrix(cells: readonly CellPlan[], { from: corner, to }: Block): (string | number)[][] {
  const matrix = Array.from({ length: to.row - corner.row + 1 }, () =>
    Array.from({ length: to.column - corner.column + 1 }, (): string | number => ""),
  );
  for (const { address, content } of cells) {
    const { from } = block(address);
    const line = matrix[from.row - corner.row];
    if (line) line[from.column - corner.column] = content;
  }
  return matrix;
}

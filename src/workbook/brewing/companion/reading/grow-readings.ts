import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { mainArea } from "../../../batch/derived/table-places";
import { batchFields } from "../../../batch/fields";
import { writtenAgain } from "../../../grid/words/cell-text";
import { address } from "../../../grid/plan/addresses";
import type { CellValue } from "../../../grid/read/named-cells";
import { movingNotes } from "../../../grid/write/moving-notes";
import { isSame, isWritten } from "../../../grid/write/same-content";
import { writeSurely } from "../../../grid/write/write-surely";
import { ChangeRefused } from "../outcome";
import { readAgain } from "../read-again";
import { readingCells, readingColumns, type NewReading } from "./reading-line";

/**
 * A full table gets one more row of the sheet, above its last one, so that table, names, formulas and the chart grow by
 * themselves; the last reading moves up into it, and the new one follows.
 */
export async function addRowAndReading(context: Excel.RequestContext, seen: BatchSheet, reading: NewReading): Promise<void> {
  const { sheet, fresh } = await readAgain(context, seen);
  const { name } = mainArea(batchFields.readings);
  const { from, to } = fresh.area(name);
  const last = readingColumns.map((column) => fresh.formulaAt(to.row, from.column + column));
  const rows = (first: number, height: number) =>
    `${address(first, from.column)}:${address(first + height - 1, from.column + readingColumns.length - 1)}`;
  const { to: seenTo, from: seenFrom } = seen.area(name);
  if (
    to.row - from.row !== seenTo.row - seenFrom.row ||
    !last.every((cell, index) => isSame(cell, seen.formulaAt(seenTo.row, seenFrom.column + index)))
  ) {
    throw new ChangeRefused("Somebody has just changed the table of readings.");
  }
  const lastAgain = last.map((cell, index) => writtenAgain(cell, fresh.at(to.row, from.column + index)));
  const cells = readingCells(reading, 0);
  const content = [lastAgain, cells.map((cell) => cell.content)];
  // The row that is inserted pushes the last reading's notes down: they follow it up again, and the new one has its own.
  const notes = await movingNotes(
    context,
    seen.sheetName,
    cells.map(({ column = 0, note }) => {
      const here = address(to.row, from.column + column);
      return { stands: here, from: address(to.row + 1, from.column + column), to: here, leaves: note };
    }),
  );
  const height = to.row - from.row + 1;
  await writeSurely({
    place: `the end of the readings on “${seen.sheetName}”`,
    write: async () => {
      context.application.suspendApiCalculationUntilNextSync();
      sheet.getRange(`${to.row}:${to.row}`).insert("Down");
      notes?.write();
      sheet.getRange(rows(to.row, 2)).formulas = content;
      await context.sync();
    },
    look: async () => {
      const now = await tableNow(context, seen.sheetName, rows(to.row, 2));
      if (!now || now.height === height) return "nothing";
      return isWritten(content, now.cells) ? "everything" : "half";
    },
    takeBack: async () => {
      const now = await tableNow(context, seen.sheetName, rows(to.row, 2));
      if (!now || now.height === height) return;
      await notes?.takeBack();
      sheet.getRange(`${to.row}:${to.row}`).delete("Up");
      sheet.getRange(rows(to.row, 1)).formulas = [lastAgain];
      await context.sync();
    },
  });
}

/** How many rows the table has now, and what stands at its end; undefined where the sheet is gone. */
async function tableNow(
  context: Excel.RequestContext,
  sheetName: string,
  end: string,
): Promise<{ readonly height: number; readonly cells: CellValue[][] } | undefined> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const readings = sheet.names.getItem("readings").getRange().load("rowCount");
  const cells = sheet.getRange(end).load("formulas");
  await context.sync();
  return { height: readings.rowCount, cells: cells.formulas as CellValue[][] };
}

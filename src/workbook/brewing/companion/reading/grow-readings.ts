import { writtenAgain } from "../../../grid/words/cell-text";
import { hostWords } from "../../../grid/words/host-words";
import { address } from "../../../grid/plan/addresses";
import type { NamedCells } from "../../../grid/read/named-cells";
import { isSame } from "../../../grid/write/write-unless-changed";
import { readyNotes, type ReadyNotes } from "../cell-notes";
import { ChangeRefused, HalfChanged } from "../outcome";
import { readAgain } from "../read-again";
import type { NewReading } from "./add-reading";

/**
 * A full table gets one more row of the sheet, above its last one, so that table, names, formulas and the chart grow by
 * themselves; the last reading moves up into it, and the new one follows.
 */
export async function addRowAndReading(context: Excel.RequestContext, seen: NamedCells, reading: NewReading): Promise<void> {
  const { sheet, fresh } = await readAgain(context, seen);
  const { from, to } = fresh.area("readings");
  const cells = (row: number) => [-1, 0, 1, 2, 3].map((column) => fresh.formulaAt(row, from.column + column));
  const last = cells(to.row);
  const rows = (first: number, height: number) => `${address(first, from.column - 1)}:${address(first + height - 1, from.column + 3)}`;
  const { to: seenTo, from: seenFrom } = seen.area("readings");
  if (
    to.row - from.row !== seenTo.row - seenFrom.row ||
    !last.every((cell, index) => isSame(cell, seen.formulaAt(seenTo.row, seenFrom.column + index - 1)))
  ) {
    throw new ChangeRefused("Somebody has just changed the table of readings.");
  }
  const lastAgain = last.map((cell, index) => writtenAgain(cell, fresh.at(to.row, from.column + index - 1)));
  const { when, reading: shown, scale, sampleTemperature, beerTemperature, note } = reading;
  const notes = await readyNotes(context, sheet, [{ note, at: address(to.row + 1, from.column) }]);
  try {
    context.application.suspendApiCalculationUntilNextSync();
    sheet.getRange(`${to.row}:${to.row}`).insert("Down");
    sheet.getRange(rows(to.row, 2)).formulas = [lastAgain, [when, shown, scale, sampleTemperature, beerTemperature]];
    notes.write();
    await context.sync();
  } catch (problem) {
    await takeBackRow(
      context,
      seen.sheetName,
      { row: to.row, cells: rows(to.row, 1), height: to.row - from.row + 1, last: lastAgain, notes },
      problem,
    );
    throw problem;
  }
}

interface LastRow {
  readonly row: number;
  readonly cells: string;
  /** Rows of the table before. */
  readonly height: number;
  readonly last: readonly (string | number | boolean)[];
  readonly notes: ReadyNotes;
}

/** Deletes the row where it was put in, and gives the last reading its place again. */
async function takeBackRow(
  context: Excel.RequestContext,
  sheetName: string,
  { row, cells, height, last, notes }: LastRow,
  problem: unknown,
): Promise<void> {
  try {
    const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
    await context.sync();
    if (sheet.isNullObject) return;
    const readings = sheet.names.getItem("readings").getRange();
    readings.load("rowCount");
    await context.sync();
    if (readings.rowCount === height) return;
    await notes.takeBack(context, sheet);
    sheet.getRange(`${row}:${row}`).delete("Up");
    sheet.getRange(cells).formulas = [[...last]];
    await context.sync();
  } catch {
    throw new HalfChanged(
      `Writing broke off and could not be taken back. Look at the end of the readings on "${sheetName}". ${hostWords(problem)}`,
    );
  }
}

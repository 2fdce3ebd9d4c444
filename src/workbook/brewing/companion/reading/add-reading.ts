import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { mainArea } from "../../../batch/derived/table-places";
import { batchFields } from "../../../batch/fields";
import { changeCells } from "../change-cells";
import { addRowAndReading } from "./grow-readings";
import { readingCells, readingColumns, type NewReading } from "./reading-line";

/** The row in the table, from 0, that holds nothing at all yet; undefined when the table is full. */
export function firstEmptyRow(sheet: BatchSheet): number | undefined {
  const { from, to } = sheet.area(mainArea(batchFields.readings).name);
  for (let row = from.row; row <= to.row; row += 1)
    if (readingColumns.every((column) => sheet.at(row, from.column + column) === "")) return row - from.row;
  return undefined;
}

/** Appends a reading to the first empty row; a full table gets a row more. */
export async function addReading(context: Excel.RequestContext, seen: BatchSheet, reading: NewReading): Promise<void> {
  const row = firstEmptyRow(seen);
  if (row === undefined) await addRowAndReading(context, seen, reading);
  else await changeCells(context, seen, readingCells(reading, row));
}

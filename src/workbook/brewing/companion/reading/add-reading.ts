import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { lineCells, mainArea, tableOffsets } from "../../../batch/derived/table-places";
import { batchFields } from "../../../batch/fields";
import type { Filled } from "../../../batch/contents";
import { changeCells, type CellChange } from "../change-cells";
import type { SheetReading } from "./corrected";
import { addRowAndReading } from "./grow-readings";

const { readings } = batchFields;
/** Counted from the first column of the table. */
export const readingColumns = Object.values(tableOffsets(readings));

/** A reading for the table: when it was taken (day number) and how warm the beer stood. */
export interface NewReading extends SheetReading {
  readonly when: number;
  readonly beerTemperature: Filled<number>;
}

/** The row in the table, from 0, that holds nothing at all yet; undefined when the table is full. */
export function firstEmptyRow(sheet: BatchSheet): number | undefined {
  const { from, to } = sheet.area(mainArea(readings).name);
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

/** @param row in the table, from 0 */
export const readingCells = ({ note, gravity: _, ...line }: NewReading, row: number): CellChange[] =>
  lineCells(readings, row, line).map(({ key, ...cell }) => ({
    ...cell,
    label: `row ${row + 1} of the readings`,
    ...(key === "reading" && note !== undefined && { note }),
  }));

import type { Filled } from "../../../batch/contents";
import type { NamedCells } from "../../../grid/read/named-cells";
import { changeCells, type CellChange } from "../change-cells";
import type { SheetReading } from "./corrected";
import { addRowAndReading } from "./grow-readings";

/** A reading for the table: when it was taken (day number) and how warm the beer stood. */
export interface NewReading extends SheetReading {
  readonly when: number;
  readonly beerTemperature: Filled<number>;
}

/** The row in the table, from 0, that holds nothing at all yet; undefined when the table is full. */
export function firstEmptyRow(sheet: NamedCells): number | undefined {
  const { from, to } = sheet.area("readings");
  for (let row = from.row; row <= to.row; row += 1)
    if ([-1, 0, 1, 2, 3].every((column) => sheet.at(row, from.column + column) === "")) return row - from.row;
  return undefined;
}

/** Appends a reading to the first empty row; a full table gets a row more. */
export async function addReading(context: Excel.RequestContext, seen: NamedCells, reading: NewReading): Promise<void> {
  const row = firstEmptyRow(seen);
  if (row === undefined) await addRowAndReading(context, seen, reading);
  else await changeCells(context, seen, readingCells(reading, row));
}

export function readingCells({ when, reading, scale, sampleTemperature, beerTemperature, note }: NewReading, row: number): CellChange[] {
  const label = `row ${row + 1} of the readings`;
  return [
    { name: "reading_times", row, label, content: when },
    { name: "readings", row, label, content: reading, ...(note !== undefined && { note }) },
    { name: "readings", row, column: 1, label, content: scale },
    { name: "readings", row, column: 2, label, content: sampleTemperature },
    { name: "beer_temperatures", row, label, content: beerTemperature },
  ];
}

import { lineCells, tableOffsets } from "../../../batch/derived/table-places";
import { batchFields } from "../../../batch/fields";
import type { Filled } from "../../../batch/contents";
import type { CellChange } from "../change-cells";
import type { SheetReading } from "./corrected";

const { readings } = batchFields;
/** Counted from the first column of the table. */
export const readingColumns = Object.values(tableOffsets(readings));

/** A reading for the table: when it was taken (day number) and how warm the beer stood. */
export interface NewReading extends SheetReading {
  readonly when: number;
  readonly beerTemperature: Filled<number>;
}

/** @param row in the table, from 0 */
export const readingCells = ({ note, gravity: _, ...line }: NewReading, row: number): CellChange[] =>
  lineCells(readings, row, line).map(({ key, ...cell }) => ({
    ...cell,
    label: `row ${row + 1} of the readings`,
    ...(key === "reading" && note !== undefined && { note }),
  }));

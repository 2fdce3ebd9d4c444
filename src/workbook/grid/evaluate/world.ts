import type { Cells } from "./cells";

export interface TableCells {
  readonly sheet: string;
  /** Whole table: the headings, the rows and, if there are any, the totals. */
  readonly range: string;
  readonly cells: Cells;
  readonly hasTotals: boolean;
}

/** The part of a workbook that an expression may look at, read beforehand. */
export interface World {
  /** Sheet on which the formula stands, and its row there (for `[@Column]`). */
  readonly sheet: string;
  readonly row: number;
  /** "B7", "B7:C9", or "B7#" for everything that spills from B7; undefined where there is no such sheet or it was not read. */
  cells(sheet: string, range: string): Cells | undefined;
  /** What a name stands for, "='Batch 1'!$B$7"; the names of the sheet come before those of the workbook. */
  name(sheet: string, name: string): string | undefined;
  /** "" is the table that the cell itself stands in. */
  table(name: string): TableCells | undefined;
}

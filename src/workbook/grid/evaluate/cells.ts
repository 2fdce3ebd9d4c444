import { CellError, type CellErrorCode } from "../../../functions/cell-error";

/** What a cell holds: `null` where nothing was ever typed, "" where a formula answers with an empty text. */
export type Cell = number | string | boolean | null | CellError;
export type Cells = readonly (readonly Cell[])[];

const errorCodes: readonly string[] = [
  "#VALUE!",
  "#N/A",
  "#NUM!",
  "#DIV/0!",
  "#REF!",
  "#NAME?",
  "#NULL!",
  "#SPILL!",
  "#CALC!",
  "#BUSY!",
  "#GETTING_DATA",
  "#CONNECT!",
  "#FIELD!",
  "#BLOCKED!",
  "#UNKNOWN!",
];

/** Excel hands the error of a cell over as a text. */
export const isErrorText = (value: unknown): value is string => typeof value === "string" && errorCodes.includes(value);

/** A cell as Excel gives it to a pane, turned into what Excel gives to a function. */
export function cellOf(value: unknown, isBlank: boolean): Cell {
  if (isBlank) return null;
  if (isErrorText(value)) return new CellError(value as CellErrorCode, `shows ${value}`);
  return typeof value === "number" || typeof value === "boolean" || typeof value === "string" ? value : null;
}

export const single = (cell: Cell): Cells => [[cell]];

export const isSingle = (cells: Cells): boolean => cells.length === 1 && cells[0]?.length === 1;

/** Joins two blocks cell by cell, as native operators do: one cell, row or column repeats. */
export function joined(first: Cells, second: Cells, join: (one: Cell, other: Cell) => Cell): Cells {
  const rows = Math.max(first.length, second.length);
  const columns = Math.max(first[0]?.length ?? 0, second[0]?.length ?? 0);
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_2, column) => join(broadcast(first, row, column), broadcast(second, row, column))),
  );
}

export function broadcast(cells: Cells, row: number, column: number): Cell {
  const line = cells.length === 1 ? cells[0] : cells[row];
  const cell = line?.length === 1 ? line[0] : line?.[column];
  return cell === undefined ? new CellError("#N/A", "the ranges have different sizes") : cell;
}

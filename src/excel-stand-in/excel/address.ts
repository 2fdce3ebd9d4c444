import { quoteSheet, unquoteSheet } from "../engine/formula-text";
import { columnIndex, columnLetters } from "../xlsx/addresses";
import { invalidArgument } from "./errors";

/** Cells of one sheet, zero-based. Whole rows and columns reach to the sheet's end. */
export interface Block {
  row: number;
  column: number;
  rowCount: number;
  columnCount: number;
}

export interface SheetSize {
  rowCount: number;
  columnCount: number;
}

const CORNER = /^\$?([A-Z]{1,3})?\$?(\d+)?$/iu;

/** Splits "'Batch 1'!A1:B2" into sheet and cells. */
export function splitAddress(address: string): { sheetName: string | undefined; cells: string } {
  const split = address.lastIndexOf("!");
  if (split < 0) return { sheetName: undefined, cells: address };
  return { sheetName: unquoteSheet(address.slice(0, split)), cells: address.slice(split + 1) };
}

/** Reads "B3", "A1:C4", "A:C" or "1:3"; undefined when it is none of these. */
export function readCells(cells: string, size: SheetSize): Block | undefined {
  const [first, last = first, ...more] = cells
    .trim()
    .split(":")
    .map((corner) => CORNER.exec(corner));
  if (more.length > 0 || !first?.[0] || !last?.[0]) return undefined;
  const columns = [first[1], last[1]].map((letters) => (letters === undefined ? undefined : columnIndex(letters)));
  const rows = [first[2], last[2]].map((digits) => (digits === undefined ? undefined : Number(digits) - 1));
  if (rows.some((row) => row !== undefined && row < 0)) return undefined;
  if (!cells.includes(":") && (columns[0] === undefined || rows[0] === undefined)) return undefined;
  const [row, rowCount] = extent(rows[0], rows[1], size.rowCount);
  const [column, columnCount] = extent(columns[0], columns[1], size.columnCount);
  return { row, column, rowCount, columnCount };
}

export function parseCells(cells: string, size: SheetSize): Block {
  const block = readCells(cells, size);
  if (!block) throw invalidArgument(`"${cells}" is not an address.`);
  return block;
}

function extent(from: number | undefined, to: number | undefined, size: number): [number, number] {
  if (from === undefined || to === undefined) return [0, size];
  return [Math.min(from, to), Math.abs(to - from) + 1];
}

/** "A1" or "A1:B2"; whole columns as "A:C" and whole rows as "1:3", as Excel writes them. */
export function cellsText({ row, column, rowCount, columnCount }: Block, size?: SheetSize): string {
  const [left, right] = [columnLetters(column), columnLetters(column + columnCount - 1)];
  if (size && rowCount >= size.rowCount) return `${left}:${right}`;
  if (size && columnCount >= size.columnCount) return `${row + 1}:${row + rowCount}`;
  const first = `${left}${row + 1}`;
  return rowCount === 1 && columnCount === 1 ? first : `${first}:${right}${row + rowCount}`;
}

/** Excel puts quotes around a sheet's name only where it needs them. */
export const sheetPrefix = (name: string): string =>
  /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name) && !readCells(name, { rowCount: 1, columnCount: 1 }) ? `${name}!` : `${quoteSheet(name)}!`;

/** With $ signs and the sheet, the way a defined name refers to cells. */
export function absoluteAddress(sheetName: string, { row, column, rowCount, columnCount }: Block): string {
  const first = `$${columnLetters(column)}$${row + 1}`;
  const last = `$${columnLetters(column + columnCount - 1)}$${row + rowCount}`;
  return `${sheetPrefix(sheetName)}${rowCount === 1 && columnCount === 1 ? first : `${first}:${last}`}`;
}

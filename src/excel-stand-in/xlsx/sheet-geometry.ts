import type { IWorksheetData } from "@univerjs/core";
import type { ColumnDef, Sheet, WriteSheet } from "hucre/xlsx";
import { LAST_COLUMN } from "./addresses";

type RowDefs = NonNullable<WriteSheet["rowDefs"]>;

/** Pixels of one digit of 11 point Calibri, the measure of Excel's column widths (ECMA-376 part 1, 18.3.1.13). */
const DIGIT_PIXELS = 7;
const PIXELS_PER_POINT = 4 / 3;
/** Excel's own sizes for a sheet that says nothing: 64 pixels wide (8.43 characters), 20 pixels high (15 points). */
export const DEFAULT_COLUMN_PIXELS = 64;
export const DEFAULT_ROW_PIXELS = 20;

export const pixelsOfWidth = (characters: number): number => Math.round(characters * DIGIT_PIXELS);
/** Excel keeps widths in steps of 1/256 of a character. */
export const widthOfPixels = (pixels: number): number => Math.trunc((pixels / DIGIT_PIXELS) * 256) / 256;
export const pixelsOfPoints = (points: number): number => points * PIXELS_PER_POINT;
export const pointsOfPixels = (pixels: number): number => Math.round((pixels / PIXELS_PER_POINT) * 100) / 100;

export function columnsFromFile(columns: readonly ColumnDef[] = []): NonNullable<IWorksheetData["columnData"]> {
  const result: NonNullable<IWorksheetData["columnData"]> = {};
  columns.slice(0, ownColumns(columns)).forEach((column, index) => {
    if (column.width === undefined && !column.hidden) return;
    result[index] = { ...(column.width === undefined ? {} : { w: pixelsOfWidth(column.width) }), ...(column.hidden ? { hd: 1 } : {}) };
  });
  return result;
}

export function rowsFromFile(rows: Sheet["rowDefs"]): NonNullable<IWorksheetData["rowData"]> {
  const result: NonNullable<IWorksheetData["rowData"]> = {};
  for (const [index, row] of rows ?? []) {
    if (row.height === undefined && !row.hidden) continue;
    result[index] = { ...(row.height === undefined ? {} : { h: pixelsOfPoints(row.height), ia: 0 }), ...(row.hidden ? { hd: 1 } : {}) };
  }
  return result;
}

/**
 * How many columns have a width of their own. Many files give one width, or hide, all columns to the sheet's last; that
 * last run stays out of the grid and is passed on as it is.
 */
export function ownColumns(columns: readonly ColumnDef[]): number {
  if (columns.length <= LAST_COLUMN) return columns.length;
  const tail = JSON.stringify(columns[LAST_COLUMN]);
  return columns.findLastIndex((column) => JSON.stringify(column) !== tail) + 1;
}

/** Grouping levels are not in the grid; they stay with the column's or row's number of the opened file. */
export function columnsToFile(sheet: Partial<IWorksheetData>, carried: readonly ColumnDef[] = []): ColumnDef[] {
  const count = Math.max(carried.length, ...Object.keys(sheet.columnData ?? {}).map((key) => Number(key) + 1));
  const own = ownColumns(carried);
  return Array.from({ length: count }, (_, index) => {
    const column = sheet.columnData?.[index];
    if (!column && index >= own) return carried[index] ?? {};
    return {
      ...grouping(carried[index]),
      ...(column?.w === undefined ? {} : { width: widthOfPixels(column.w) }),
      ...(column?.hd ? { hidden: true } : {}),
    };
  });
}

/** Rows that fit themselves to their text (`ia`) keep no height: Excel and LibreOffice measure them on opening. */
export function rowsToFile(sheet: Partial<IWorksheetData>, carried: Sheet["rowDefs"]): RowDefs {
  const result: RowDefs = new Map();
  for (const [index, row] of carried ?? []) if (Object.keys(grouping(row)).length > 0) result.set(index, grouping(row));
  for (const [key, row] of Object.entries(sheet.rowData ?? {})) {
    const height = row?.h === undefined || row.ia ? {} : { height: pointsOfPixels(row.h) };
    const written = { ...result.get(Number(key)), ...height, ...(row?.hd ? { hidden: true } : {}) };
    if (Object.keys(written).length > 0) result.set(Number(key), written);
  }
  return result;
}

const grouping = (item: { outlineLevel?: number; collapsed?: boolean } | undefined): { outlineLevel?: number; collapsed?: boolean } => ({
  ...(item?.outlineLevel ? { outlineLevel: item.outlineLevel } : {}),
  ...(item?.collapsed ? { collapsed: true } : {}),
});

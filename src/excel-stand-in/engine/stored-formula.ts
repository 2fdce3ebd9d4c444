import type { ICellData, Nullable } from "@univerjs/core";

/**
 * How a workbook file stored a formula, as far as it decides what the formula means. It stands in the cell's `custom` data:
 * - `legacy: true`: a plain formula, without the mark of dynamic arrays. Where it asks for one value and finds a range, it takes the
 *   value of its own row or column (Excel shows that as `@`); it never spills.
 * - `array: [rows, columns]`: a formula entered for a fixed block (`{=…}`), of which its cell is the first. It reads whole ranges, and
 *   fills the block and no more.
 * - neither: dynamic, as is everything that is typed here.
 */
export interface StoredFormula {
  legacy?: true;
  array?: [rows: number, columns: number];
}

type Cell = Nullable<Pick<ICellData, "custom">>;

export const isLegacyFormula = (cell: Cell): boolean => cell?.custom?.["legacy"] === true;

/** The block that a formula was entered for, as rows and columns from its own cell on; undefined for any other formula. */
export function arrayBlock(cell: Cell): { rows: number; columns: number } | undefined {
  const size: unknown = cell?.custom?.["array"];
  if (!Array.isArray(size) || !size.every((count) => Number.isInteger(count) && count > 0)) return undefined;
  const [rows, columns] = size as [number, number];
  return { rows, columns };
}

/** What a cell's `custom` data must become when another formula is entered; undefined if it may stay. */
export function customForNewFormula(cell: Cell): { custom: ICellData["custom"] } | undefined {
  if (!cell?.custom || !("legacy" in cell.custom || "array" in cell.custom)) return undefined;
  const { legacy: _legacy, array: _array, ...rest } = cell.custom as Record<string, unknown>;
  return { custom: Object.keys(rest).length > 0 ? rest : null };
}

import type { ICellData, Nullable } from "@univerjs/core";

/**
 * How a workbook file stored a formula, as far as it decides what the formula means. It stands in the cell's `custom` data:
 * - `legacy: true`: a plain formula, without the mark of dynamic arrays. Where it asks for one value and finds a range, it takes the
 *   value of its own row or column (Excel shows that as `@`); it never spills.
 * - `array: [rows, columns]`: a formula entered for a fixed block (`{=…}`), of which its cell is the first. It reads whole ranges, and
 *   fills the block and no more.
 * - `unread: { formula, value }`: a formula that nothing here can read, as the file spells it. The cell holds the value that the file kept
 *   with it, and no formula; as long as it does, a file gets the formula back.
 * - `dynamic: true`, or none of these as in everything that is typed here: a dynamic formula.
 */
export interface StoredFormula {
  legacy?: true;
  dynamic?: true;
  array?: [rows: number, columns: number];
  unread?: { formula: string; value: ICellData["v"] };
}

type Cell = Nullable<Pick<ICellData, "custom">>;

export const isLegacyFormula = (cell: Cell): boolean => cell?.custom?.["legacy"] === true;

/** Whether a file said so of a dynamic formula, which nothing in its text or its result may show. */
export const isStoredDynamic = (cell: Cell): boolean => cell?.custom?.["dynamic"] === true;

/** The formula, as a file spells it, behind a value that stands in for it. */
export function unreadFormula(cell: Nullable<Pick<ICellData, "custom" | "f" | "si" | "v">>): string | undefined {
  const unread = cell?.custom?.["unread"] as StoredFormula["unread"];
  return unread && !cell?.f && !cell?.si && (cell?.v ?? null) === (unread.value ?? null) ? unread.formula : undefined;
}

/** The block that a formula was entered for, as rows and columns from its own cell on; undefined for any other formula. */
export function arrayBlock(cell: Cell): { rows: number; columns: number } | undefined {
  const size: unknown = cell?.custom?.["array"];
  if (!Array.isArray(size) || !size.every((count) => Number.isInteger(count) && count > 0)) return undefined;
  const [rows, columns] = size as [number, number];
  return { rows, columns };
}

/** Whether the formula stands as a file held it. Then a file may hold it again, whether we can read it or not. */
export const isStoredFormula = (cell: Cell): boolean => MARKS.some((mark) => mark in (cell?.custom ?? {}));

const MARKS: readonly (keyof StoredFormula)[] = ["legacy", "dynamic", "array", "unread"];

/** What a cell's `custom` data must become when another formula is entered; undefined if it may stay. */
export function customForNewFormula(cell: Cell): { custom: ICellData["custom"] } | undefined {
  if (!isStoredFormula(cell)) return undefined;
  const rest = Object.entries(cell!.custom!).filter(([key]) => !(MARKS as readonly string[]).includes(key));
  return { custom: rest.length > 0 ? Object.fromEntries(rest) : null };
}

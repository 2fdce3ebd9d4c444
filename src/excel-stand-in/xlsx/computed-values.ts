/**
 * What the calculation engine hands to `saveWorkbook`: the results that a file keeps beside its formulas.
 *
 * A Univer snapshot holds formulas, but neither the values spilled by them nor how far they spill. A program that opens
 * the file without our functions shows exactly what is written here.
 */

/** The error texts that Excel can store in a cell. */
export const CELL_ERRORS = [
  "#DIV/0!",
  "#N/A",
  "#NAME?",
  "#NULL!",
  "#NUM!",
  "#REF!",
  "#VALUE!",
  "#GETTING_DATA",
  "#SPILL!",
  "#CALC!",
] as const;
export type CellErrorText = (typeof CELL_ERRORS)[number];

/** An error is an object, so that a cell with the text "#N/A" and a cell with the error #N/A stay different things. */
export interface CachedError {
  readonly error: CellErrorText;
}

/** One result. Empty text is `""`; `null` means that there is no result (yet), and the formula is then written without one. */
export type CachedValue = number | string | boolean | CachedError | null;

/** A spilled range, all indexes from 0, both ends included; its top left cell holds the formula. */
export interface SpillRange {
  startRow: number;
  startColumn: number;
  endRow: number;
  endColumn: number;
}

export interface ComputedSheet {
  /** The value of every formula cell and of every spilled cell: `values[row][column]`, indexes from 0. */
  values: Record<number, Record<number, CachedValue>>;
  /** Every formula that fills more than its own cell. One-cell results need no entry. */
  spills: SpillRange[];
}

/** Computed values by sheet id (the ids of `snapshot.sheets`). A sheet without formulas needs no entry. */
export type ComputedValues = Record<string, ComputedSheet>;

/** For a workbook without formulas. */
export const NOTHING_COMPUTED: ComputedValues = {};

export function isCachedError(value: unknown): value is CachedError {
  return typeof value === "object" && value !== null && "error" in value;
}

/** Turns a raw engine result into a cached value: the engine gives errors as text. */
export function cachedValueOf(raw: unknown): CachedValue {
  if (typeof raw === "string" && (CELL_ERRORS as readonly string[]).includes(raw)) return { error: raw as CellErrorText };
  if (typeof raw === "number") return Number.isFinite(raw) ? raw : { error: "#NUM!" };
  if (typeof raw === "string" || typeof raw === "boolean") return raw;
  return null;
}

/** The result of one cell, or `null` where none was handed in. */
export function computedAt(computed: ComputedValues, sheetId: string, row: number, column: number): CachedValue {
  return computed[sheetId]?.values[row]?.[column] ?? null;
}

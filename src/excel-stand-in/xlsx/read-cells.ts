import type { ICellData, IStyleData } from "@univerjs/core";
import type { Cell, CellValue, Sheet } from "hucre/xlsx";
import type { StoredFormula } from "../engine/stored-formula";
import { parseBlock } from "./addresses";
import { styleFromFile, type StyleContext } from "./cell-styles";
import { cachedValueOf, type CachedValue, type ComputedSheet, type SpillRange } from "./computed-values";
import { serialOfDate } from "./dates";
import { callsOurFunctions, fromFileFormula } from "./formula-translation";
import { isTooDeep } from "../engine/formula-depth";
import { shiftFormula } from "./formula-shift";

export type CellGrid = Record<number, Record<number, ICellData>>;

/** What reading cells needs to know about the whole workbook. */
export interface CellContext extends StyleContext {
  functionNames: readonly string[];
  /** Gives equal styles one id, so that the snapshot holds each style once. */
  styleId(style: IStyleData): string;
}

/** The grid's cell types (its enum CellValueType). */
const TEXT = 1,
  NUMBER = 2,
  BOOLEAN = 3;

/**
 * The cells of a sheet for the grid, and apart from them the results that the file kept: spilled values are results,
 * not contents, so they are in `computed` only.
 */
export function readCells(sheet: Sheet, context: CellContext): { cellData: CellGrid; computed: ComputedSheet } {
  const cellData: CellGrid = {};
  const computed: ComputedSheet = { values: {}, spills: [] };
  const details = sheet.cells ?? new Map<string, Cell>();
  const formulas = readFormulas(details, context.functionNames, {
    rows: sheet.rows.length,
    columns: widthOf(sheet),
  });
  computed.spills = [...formulas.values()].flatMap(({ block }) => (block ? [block] : []));
  const put = (row: number, column: number, value: CellValue | undefined, detail: Cell | undefined): void => {
    const raw = plainValue(value);
    const stored = formulas.get(`${row},${column}`);
    const formula = stored?.formula;
    const spilled = computed.spills.some((block) => inside(block, row, column)) && !formula;
    if (formula || spilled) (computed.values[row] ??= {})[column] = cachedValueOf(raw);
    const cell = gridCell(spilled ? null : raw, stored, detail, context);
    if (cell) (cellData[row] ??= {})[column] = cell;
  };
  sheet.rows.forEach((values, row) => values.forEach((value, column) => put(row, column, value, details.get(`${row},${column}`))));
  for (const [key, detail] of details) {
    const [row, column] = key.split(",").map(Number) as [number, number];
    if (column >= (sheet.rows[row]?.length ?? 0)) put(row, column, detail.value, detail);
  }
  return { cellData, computed };
}

/** How many columns the widest row has. A sheet may have a million rows: too many for the arguments of a function. */
export const widthOf = (sheet: Sheet): number => sheet.rows.reduce((width, row) => Math.max(width, row.length), 0);

function gridCell(
  value: CachedRaw,
  stored: ReadFormula | undefined,
  detail: Cell | undefined,
  context: CellContext,
): ICellData | undefined {
  const style = styleFromFile(detail?.style, context);
  const typed = value === null ? {} : typedValue(value);
  const unread = stored?.marks.unread && { ...stored.marks.unread, value: typed.v };
  const custom = {
    ...(detail?.style?.protection?.locked === false ? { unlocked: true } : {}),
    ...stored?.marks,
    ...(unread ? { unread } : {}),
  };
  const cell: ICellData = {
    ...(stored?.formula ? { f: stored.formula } : {}),
    ...typed,
    ...(style ? { s: context.styleId(style) } : {}),
    ...(Object.keys(custom).length > 0 ? { custom } : {}),
  };
  return Object.keys(cell).length > 0 ? cell : undefined;
}

type CachedRaw = Exclude<CachedValue, object> | null;

function typedValue(value: Exclude<CachedRaw, null>): ICellData {
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: BOOLEAN };
  return { v: value, t: typeof value === "number" ? NUMBER : TEXT };
}

const plainValue = (value: CellValue | undefined): CachedRaw => (value instanceof Date ? serialOfDate(value) : (value ?? null));

interface ReadFormula {
  /** Undefined where nobody here can read it; then `marks` has its text. */
  formula: string | undefined;
  marks: StoredFormula;
  /** What it fills beyond its own cell. */
  block?: SpillRange;
}

/** All formulas by "row,column"; those that a file stores once for many cells are written out for each. */
function readFormulas(
  cells: ReadonlyMap<string, Cell>,
  functionNames: readonly string[],
  used: { rows: number; columns: number },
): Map<string, ReadFormula> {
  const shared = new Map<number, { formula: string; row: number; column: number }>();
  const result = new Map<string, ReadFormula>();
  for (const [key, cell] of cells) {
    if (cell.formula === undefined) continue;
    const [row, column] = key.split(",").map(Number) as [number, number];
    let formula = cell.formula;
    if (cell.formulaSharedIndex !== undefined) {
      if (formula) shared.set(cell.formulaSharedIndex, { formula, row, column });
      const master = shared.get(cell.formulaSharedIndex);
      if (!formula && master) formula = shiftFormula(master.formula, row - master.row, column - master.column);
    }
    if (!formula) continue;
    const whole = cell.formulaType === "array" && cell.formulaRef ? parseBlock(cell.formulaRef) : undefined;
    // A file can claim that a formula fills the whole sheet; what it filled has cells.
    const block = whole && {
      ...whole,
      endRow: Math.min(whole.endRow, used.rows - 1),
      endColumn: Math.min(whole.endColumn, used.columns - 1),
    };
    const fills = block && (block.endRow > row || block.endColumn > column);
    const deep = isTooDeep(formula);
    const shown = deep ? "" : fromFileFormula(formula, functionNames);
    // Excel writes every formula with a custom function as a dynamic one: a plain one comes from a program that knows no such marks.
    const ours = callsOurFunctions(shown);
    const marks: StoredFormula = cell.formulaDynamic ? { dynamic: true } : block ? { array: sizeOf(block) } : { legacy: true };
    if (deep) Object.assign(marks, { unread: { formula, value: null } }, block ? { array: sizeOf(block) } : {});
    result.set(key, {
      formula: deep ? undefined : shown,
      marks: ours && !marks.array ? {} : marks,
      ...(fills && !deep ? { block } : {}),
    });
  }
  return result;
}

const sizeOf = (block: SpillRange): [rows: number, columns: number] => [
  Math.max(1, block.endRow - block.startRow + 1),
  Math.max(1, block.endColumn - block.startColumn + 1),
];

const inside = (block: SpillRange, row: number, column: number): boolean =>
  row >= block.startRow && row <= block.endRow && column >= block.startColumn && column <= block.endColumn;

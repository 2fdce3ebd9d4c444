import type { ICellData, IStyleData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { Cell, CellStyle, Sheet } from "hucre/xlsx";
import { arrayBlock, isLegacyFormula, isStoredDynamic, isStoredFormula, unreadFormula } from "../engine/stored-formula";
import { blockAddress } from "./addresses";
import { isDynamicFormula, surroundingsOf } from "./array-formulas";
import { styleFromFile, styleToFile, type StyleContext } from "./cell-styles";
import { cachedValueOf, isCachedError, type CachedValue, type ComputedSheet, type SpillRange } from "./computed-values";
import { markedError } from "./error-marks";
import { InheritedStyles } from "./inherited-styles";
import { shiftFormula } from "./formula-shift";
import { toFileFormula } from "./formula-translation";
import { isUnreadable } from "./unreadable-formula";

type FileCell = Partial<Cell>;
type SharedFormulas = Map<string, { formula: string; row: number; column: number }>;

/** What writing a sheet's cells needs: `carried` is the sheet as the opened file had it, for what the grid cannot hold. */
export interface CellSource {
  snapshot: IWorkbookData;
  sheet: Partial<IWorksheetData>;
  computed: ComputedSheet | undefined;
  carried: Sheet | undefined;
  styles: StyleContext;
  /** Told of each formula that goes into the file as a text, since no spreadsheet program could read it. */
  savedAsText(row: number, column: number): void;
}

export function writeCells(source: CellSource): Map<string, FileCell> {
  const cells = new Map<string, FileCell>();
  const looks = new InheritedStyles(source.snapshot, source.sheet);
  const shared = sharedFormulas(source.sheet);
  const anchors = new Map<string, SpillRange>();
  for (const spill of source.computed?.spills ?? []) {
    const anchor = cellAt(source.sheet, spill.startRow, spill.startColumn);
    if (anchor && !isLegacyFormula(anchor) && formulaOf(anchor, spill.startRow, spill.startColumn, shared))
      anchors.set(`${spill.startRow},${spill.startColumn}`, spill);
  }
  for (const [row, columns] of entries(source.sheet.cellData)) {
    for (const [column, cell] of entries(columns)) {
      const formula = formulaOf(cell, row, column, shared);
      const fixed = formula ? arrayBlock(cell) : undefined;
      if (fixed) {
        const [endRow, endColumn] = [row + fixed.rows - 1, column + fixed.columns - 1];
        anchors.set(`${row},${column}`, { startRow: row, startColumn: column, endRow, endColumn });
      }
      const content = formula
        ? formulaCell(formula, cell, row, column, anchors.get(`${row},${column}`), source)
        : (unreadCell(cell, row, column) ?? plainCell(cell));
      const style = fileStyle(looks.styleOf(cell, row, column), cell, row, column, source);
      const written = { ...kept(content, row, column, source.carried), ...content, ...(style ? { style } : {}) };
      if (Object.keys(written).length > 0) cells.set(`${row},${column}`, written);
    }
  }
  for (const [row, column] of looks.emptyCells()) {
    const style = fileStyle(looks.styleOf(undefined, row, column), {}, row, column, source);
    if (style) cells.set(`${row},${column}`, { style });
  }
  for (const spill of anchors.values()) writeSpill(spill, cells, source);
  return cells;
}

function formulaCell(
  formula: string,
  cell: ICellData,
  row: number,
  column: number,
  spill: SpillRange | undefined,
  source: CellSource,
): FileCell {
  const known = source.computed?.values[row]?.[column];
  const cached = known === undefined ? cachedOf(cell) : known;
  if (!isStoredFormula(cell) && isUnreadable(formula, cached)) {
    source.savedAsText(row, column);
    return { value: formula, type: "string" };
  }
  const result = fileResult(cached);
  const array = arrayBlock(cell) !== undefined;
  const dynamic =
    !array &&
    !isLegacyFormula(cell) &&
    (spill !== undefined || isStoredDynamic(cell) || isDynamicFormula(formula, { row, column }, surroundingsOf(source.snapshot)));
  return {
    type: "formula",
    formula: toFileFormula(formula),
    value: result,
    formulaResult: result,
    ...(dynamic || array
      ? {
          formulaType: "array",
          ...(dynamic ? { formulaDynamic: true } : {}),
          formulaRef: blockAddress(spill ?? { startRow: row, startColumn: column, endRow: row, endColumn: column }),
        }
      : {}),
  };
}

/** A formula that nobody here could read goes back as it came, with the value that came with it. */
function unreadCell(cell: ICellData, row: number, column: number): FileCell | undefined {
  const formula = unreadFormula(cell);
  if (formula === undefined) return undefined;
  const result = fileResult(cachedOf(cell));
  const block = arrayBlock(cell) ?? (isStoredDynamic(cell) ? { rows: 1, columns: 1 } : undefined);
  return {
    type: "formula",
    formula,
    value: result,
    formulaResult: result,
    ...(isStoredDynamic(cell) ? { formulaDynamic: true } : {}),
    ...(block
      ? {
          formulaType: "array",
          formulaRef: blockAddress({
            startRow: row,
            startColumn: column,
            endRow: row + block.rows - 1,
            endColumn: column + block.columns - 1,
          }),
        }
      : {}),
  };
}

/** The cells of a spill other than its first, which holds the formula. */
function writeSpill(spill: SpillRange, cells: Map<string, FileCell>, source: CellSource): void {
  for (let row = spill.startRow; row <= spill.endRow; row++) {
    for (let column = spill.startColumn; column <= spill.endColumn; column++) {
      if (row === spill.startRow && column === spill.startColumn) continue;
      const value = source.computed?.values[row]?.[column] ?? inFixedBlock(spill, row, column, source);
      const text = isCachedError(value) ? value.error : value;
      const key = `${row},${column}`;
      // A spilled empty text stays a cell with empty text, as Excel writes it.
      if (text !== null) cells.set(key, { ...cells.get(key), value: text, type: typeof text as "string" });
    }
  }
}

/**
 * What a formula entered for a fixed block shows where it gave no value of its own: one value fills the block, one row or
 * column repeats, and beyond a larger answer stands #N/A.
 */
function inFixedBlock(block: SpillRange, row: number, column: number, { sheet, computed }: CellSource): CachedValue {
  const { startRow, startColumn } = block;
  if (!arrayBlock(cellAt(sheet, startRow, startColumn))) return null;
  const given = computed?.spills.find((one) => one.startRow === startRow && one.startColumn === startColumn);
  const from = {
    row: (given?.endRow ?? startRow) === startRow ? startRow : row,
    column: (given?.endColumn ?? startColumn) === startColumn ? startColumn : column,
  };
  const beyond = from.row > (given?.endRow ?? startRow) || from.column > (given?.endColumn ?? startColumn);
  return beyond ? { error: "#N/A" } : (computed?.values[from.row]?.[from.column] ?? null);
}

const cachedOf = (cell: ICellData): CachedValue => cachedValueOf(plainCell(cell).value);

/** A result as the library takes it; errors carry a mark, since it would write them as text (see error-marks.ts). */
const fileResult = (value: CachedValue): string | number | boolean | null => (isCachedError(value) ? markedError(value.error) : value);

const BOOLEAN = 3;
const FORMATTED_END = /\r?\n?$/;

function plainCell(cell: ICellData): FileCell {
  if (cell.p?.body) return { value: cell.p.body.dataStream.replace(FORMATTED_END, "").replaceAll("\r", "\n"), type: "string" };
  if (cell.v === null || cell.v === undefined || cell.v === "") return {};
  if (cell.t === BOOLEAN) return { value: cell.v === true || cell.v === 1 || cell.v === "1" || cell.v === "TRUE", type: "boolean" };
  return { value: cell.v, type: typeof cell.v as "string" };
}

function fileStyle(style: IStyleData | undefined, cell: ICellData, row: number, column: number, source: CellSource): CellStyle | undefined {
  const unlocked = cell.custom?.unlocked === true;
  const before = source.carried?.cells?.get(`${row},${column}`)?.style;
  // What the grid did not change is written as it was read: theme colours, gradients and the like are not in the grid.
  const same =
    before &&
    (before.protection?.locked === false) === unlocked &&
    JSON.stringify(styleFromFile(before, source.styles) ?? {}) === JSON.stringify(style ?? {});
  return same ? before : styleToFile(style, source.styles.defaultFont, unlocked);
}

/** Formatted text, links and tick boxes of the opened file, as long as the cell still holds the same value. */
function kept(content: FileCell, row: number, column: number, carried: Sheet | undefined): FileCell {
  const before = carried?.cells?.get(`${row},${column}`);
  if (!before || before.formula !== undefined || content.formula !== undefined || before.value !== content.value) return {};
  return {
    ...(before.richText ? { richText: before.richText } : {}),
    ...(before.hyperlink ? { hyperlink: before.hyperlink } : {}),
    ...(before.checkbox ? { checkbox: before.checkbox } : {}),
  };
}

/** The grid stores a formula that was filled down once, under an id; the other cells hold the id only. */
function sharedFormulas(sheet: Partial<IWorksheetData>): SharedFormulas {
  const shared: SharedFormulas = new Map();
  for (const [row, columns] of entries(sheet.cellData)) {
    for (const [column, cell] of entries(columns)) if (cell.f && cell.si) shared.set(cell.si, { formula: cell.f, row, column });
  }
  return shared;
}

function formulaOf(cell: ICellData, row: number, column: number, shared: SharedFormulas): string | undefined {
  if (cell.f) return cell.f;
  const master = cell.si ? shared.get(cell.si) : undefined;
  return master && shiftFormula(master.formula, row - master.row, column - master.column);
}

const cellAt = (sheet: Partial<IWorksheetData>, row: number, column: number): ICellData | undefined =>
  sheet.cellData?.[row]?.[column] ?? undefined;

/** The entries of one of the grid's sparse lists, in order. */
function entries<Item>(list: Record<number, Item> | undefined): [number, NonNullable<Item>][] {
  return Object.entries(list ?? {})
    .filter(([, item]) => item !== null && item !== undefined)
    .map(([key, item]) => [Number(key), item as NonNullable<Item>]);
}

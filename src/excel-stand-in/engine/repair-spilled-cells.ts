import type { IRange, Injector, ObjectMatrix } from "@univerjs/core";
import { ErrorType, FormulaDataModel } from "@univerjs/engine-formula";

type Shown = { v?: unknown } | null | undefined;
type ByCell<T> = Record<number, Record<number, T>>;
type BySheet<T> = Record<string, Record<string, T> | undefined>;

/** What the engine's register of spills keeps to itself. */
interface Register {
  _arrayFormulaRange: BySheet<ByCell<IRange>>;
  _arrayFormulaCellData: BySheet<ByCell<Shown>>;
  clearPreviousArrayFormulaCellData(single: BySheet<ObjectMatrix<Shown>>): void;
  mergeArrayFormulaCellData(cells: BySheet<ObjectMatrix<Shown>>): void;
  mergeArrayFormulaRange(ranges: BySheet<ByCell<IRange>>): void;
  updateArrayFormulaCellData(unitId: string, sheetId: string, edited: ByCell<unknown>): boolean;
}

/** A formula whose answer has no room: its range is known, since room may come, but the cells in it are others'. */
export const isBlocked = (shown: Shown): boolean => shown?.v === ErrorType.SPILL;

/**
 * The cells that answers spill into. The engine takes out and leaves in by the ranges of all spills, blocked ones too: calculating a
 * blocked one took away what another had spilled there, and what that other one left when it became an error stayed. Here
 * the cells are those of the spills that have room, each as it was calculated last, and the first cell of those that have none.
 */
export function repairSpilledCells(injector: Injector): void {
  const register = injector.get(FormulaDataModel) as unknown as Register;
  let single: BySheet<ObjectMatrix<Shown>> = {};
  let calculated: BySheet<ObjectMatrix<Shown>> = {};
  // The three are called one after the other at the end of a calculation.
  register.clearPreviousArrayFormulaCellData = (cells) => void (single = cells);
  register.mergeArrayFormulaCellData = (cells) => void (calculated = cells);
  register.mergeArrayFormulaRange = (ranges) => {
    for (const unitId of new Set([...Object.keys(single), ...Object.keys(ranges)])) {
      for (const sheetId of new Set([...Object.keys(single[unitId] ?? {}), ...Object.keys(ranges[unitId] ?? {})])) {
        const [allRanges, allCells] = [(register._arrayFormulaRange[unitId] ??= {}), (register._arrayFormulaCellData[unitId] ??= {})];
        const sheet = new SpillsOfSheet();
        const [before, shown] = [allRanges[sheetId] ?? {}, allCells[sheetId] ?? {}];
        const now = ranges[unitId]?.[sheetId] ?? {};
        for (const [row, column, range] of entries(before)) {
          if (now[row]?.[column] || single[unitId]?.[sheetId]?.getValue(row, column) !== undefined) continue;
          sheet.add(row, column, range, (r, c) => shown[r]?.[c]);
        }
        const fresh = calculated[unitId]?.[sheetId];
        for (const [row, column, range] of entries(now)) sheet.add(row, column, range, (r, c) => fresh?.getValue(r, c) ?? undefined);
        [allRanges[sheetId], allCells[sheetId]] = [sheet.ranges, sheet.cells];
      }
    }
    [single, calculated] = [{}, {}];
  };
  register.updateArrayFormulaCellData = (unitId, sheetId, edited) => {
    const ranges = register._arrayFormulaRange[unitId]?.[sheetId];
    const cells = register._arrayFormulaCellData[unitId]?.[sheetId];
    if (!ranges || !cells) return false;
    let changed = false;
    for (const [row, column] of entries(edited)) {
      const own = ranges[row]?.[column];
      const taken = own && !isBlocked(cells[row]?.[column]) ? own : { startRow: row, endRow: row, startColumn: column, endColumn: column };
      for (const [r, c] of cellsOf(taken)) {
        if (cells[r]?.[c] === undefined) continue;
        delete cells[r][c];
        changed = true;
      }
    }
    return changed;
  };
}

class SpillsOfSheet {
  readonly ranges: ByCell<IRange> = {};
  readonly cells: ByCell<Shown> = {};

  add(row: number, column: number, range: IRange, shownAt: (row: number, column: number) => Shown): void {
    (this.ranges[row] ??= {})[column] = range;
    const reach = isBlocked(shownAt(row, column)) ? [[row, column] as const] : cellsOf(range);
    for (const [r, c] of reach) {
      const shown = shownAt(r, c);
      if (shown != null) (this.cells[r] ??= {})[c] = shown;
    }
  }
}

function* entries<T>(cells: ByCell<T>): Generator<[row: number, column: number, value: NonNullable<T>]> {
  for (const [row, columns] of Object.entries(cells))
    for (const [column, value] of Object.entries(columns)) if (value != null) yield [Number(row), Number(column), value];
}

function* cellsOf({ startRow, endRow, startColumn, endColumn }: IRange): Generator<readonly [row: number, column: number]> {
  for (let row = startRow; row <= endRow; row++) for (let column = startColumn; column <= endColumn; column++) yield [row, column];
}

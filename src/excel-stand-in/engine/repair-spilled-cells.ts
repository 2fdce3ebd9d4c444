import type { IRange, Injector, ObjectMatrix } from "@univerjs/core";
import { ErrorType, FormulaDataModel, IFormulaCurrentConfigService, IFormulaRuntimeService } from "@univerjs/engine-formula";

type Shown = { v?: unknown } | null | undefined | void;
type ByCell<T> = Record<number, Record<number, T> | undefined>;
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
  lookForRoom(injector);
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

interface Calculation {
  _isInOtherArrayFormulaRange(unitId: string, sheetId: string, row: number, column: number, atRow: number, atColumn: number): boolean;
}

/**
 * Whether another answer has spilled into a cell. The engine takes a blocked one that is not just being calculated for one that has its
 * cells, so that two answers without room kept each other out, and one that has just withdrawn for one that is still there.
 */
function lookForRoom(injector: Injector): void {
  const config = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  (runtime as unknown as Calculation)._isInOtherArrayFormulaRange = (unitId, sheetId, row, column, atRow, atColumn) => {
    const [values, before] = [runtime.getUnitData()[unitId]?.[sheetId], config.getArrayFormulaCellData()[unitId]?.[sheetId]];
    const ranges = (config.getArrayFormulaRange() as BySheet<ByCell<IRange>>)[unitId]?.[sheetId] ?? {};
    const now = (runtime.getUnitArrayFormula() as BySheet<ByCell<IRange>>)[unitId]?.[sheetId] ?? {};
    for (const [r, c, ofLastTime] of entries(ranges)) {
      if (r === row && c === column) continue;
      const calculated = values?.getValue(r, c) as Shown;
      const range = calculated == null ? ofLastTime : now[r]?.[c];
      if (range && contains(range, atRow, atColumn) && !isBlocked(calculated ?? (before?.getValue(r, c) as Shown))) return true;
    }
    return false;
  };
}

const contains = ({ startRow, endRow, startColumn, endColumn }: IRange, row: number, column: number): boolean =>
  row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;

/** The cells of answers that had no room last time, and whose cells some are now free of another one's. */
export function waitingFor(
  freed: IRange,
  ranges: ByCell<IRange> | undefined,
  isWaiting: (row: number, column: number) => boolean,
): IRange[] {
  return [...entries(ranges ?? {})]
    .filter(([row, column, { startRow, endRow, startColumn, endColumn }]) => {
      const meets =
        startRow <= freed.endRow && endRow >= freed.startRow && startColumn <= freed.endColumn && endColumn >= freed.startColumn;
      return meets && isWaiting(row, column);
    })
    .map(([row, column]) => ({ startRow: row, endRow: row, startColumn: column, endColumn: column }));
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
    for (const [column, value] of Object.entries(columns ?? {})) if (value != null) yield [Number(row), Number(column), value];
}

function* cellsOf({ startRow, endRow, startColumn, endColumn }: IRange): Generator<readonly [row: number, column: number]> {
  for (let row = startRow; row <= endRow; row++) for (let column = startColumn; column <= endColumn; column++) yield [row, column];
}

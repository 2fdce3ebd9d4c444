import type { IRange, Injector, ObjectMatrix } from "@univerjs/core";
import {
  FORMULA_REF_TO_ARRAY_CACHE,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
} from "@univerjs/engine-formula";
import { isBlocked, waitingFor } from "./repair-spilled-cells";

/** The steps of a calculation that the engine keeps to itself. */
interface Passes {
  _executeStep(): Promise<true | undefined>;
  _apply(afterSpills?: boolean): Promise<RuntimeState | undefined>;
  _getArrayFormulaDirtyRangeAndExcludedRange(
    spills: SpillRanges,
    features: RuntimeState["runtimeFeatureRange"],
  ): { dirtyRanges: DirtyRange[] };
}

interface RuntimeState {
  arrayFormulaRange: SpillRanges;
  runtimeFeatureRange: Record<string, unknown>;
}

type ByCell<T> = Record<number, Record<number, T> | undefined>;
type SpillRanges = Record<string, Record<string, ByCell<IRange>> | undefined>;
interface DirtyRange {
  unitId: string;
  sheetId: string;
  range: IRange;
}

/** Deeper chains of spills than this are left as they are, so that two spills that feed each other come to an end. */
const mostPasses = 30;

/**
 * A formula that reads spilled cells cannot be put in order before it is known where answers spill to. The engine
 * calculates once more for what reads the spills, and leaves out the spills themselves: a spill that hangs on another
 * one, by way of plain formulas, kept the answer of before, and what reads a spill that was withdrawn kept its old
 * value. Here the passes go on until no spill changes any more.
 */
export function repairSpillPasses(injector: Injector): void {
  const service = injector.get(ICalculateFormulaService) as unknown as Passes;
  const config = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  const leftBehind = watchShrinking(config, runtime);
  service._executeStep = async () => {
    leftBehind.splice(0);
    const first = await service._apply();
    if (!first) return undefined;
    // What forced everything to be calculated has been seen to; from here on only the spills are followed.
    Object.assign(config, { _forceCalculate: false });
    let dirtyRanges = [
      ...service._getArrayFormulaDirtyRangeAndExcludedRange(first.arrayFormulaRange, first.runtimeFeatureRange).dirtyRanges,
      ...leftBehind.splice(0),
    ];
    for (let pass = 0; pass < mostPasses && dirtyRanges.length > 0; pass++) {
      const before = contents(first.arrayFormulaRange, runtime);
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      config.loadDirtyRangesAndExcludedCell(dirtyRanges, {});
      const state = await service._apply(true);
      if (!state) return undefined;
      const changed = [...contents(state.arrayFormulaRange, runtime)]
        .filter(([key, { text }]) => before.get(key)?.text !== text)
        .map(([, { at }]) => at);
      dirtyRanges = [...changed, ...leftBehind.splice(0)];
    }
    return true;
  };
}

/**
 * Looks at every answer as it comes in. Where a spill becomes smaller, a single value, or has no room any more, the cells that it
 * leaves must not go on showing to other formulas what stood there: they are emptied, and returned as ranges to follow up, with the cells of
 * answers that wait for room there.
 */
function watchShrinking(config: IFormulaCurrentConfigService, runtime: IFormulaRuntimeService): DirtyRange[] {
  const leftBehind: DirtyRange[] = [];
  const setRuntimeData = runtime.setRuntimeData.bind(runtime);
  runtime.setRuntimeData = (answer) => {
    const { currentUnitId: unitId, currentSubUnitId: sheetId, currentRow: row, currentColumn: column } = runtime;
    const spills = () => (runtime.getUnitArrayFormula() as SpillRanges)[unitId]?.[sheetId]?.[row];
    const values = () => runtime.getUnitData()[unitId]?.[sheetId];
    const spilled = () => runtime.getRuntimeArrayFormulaCellData()[unitId]?.[sheetId];
    const stale = config.getArrayFormulaCellData()[unitId]?.[sheetId];
    const present = () => (isBlocked(values()?.getValue(row, column)) ? undefined : spills()?.[column]);
    const ofThisPassSeries = present();
    const ofLastCalculation = () => (config.getArrayFormulaRange() as SpillRanges)[unitId]?.[sheetId];
    const ofLastTime = isBlocked(stale?.getValue(row, column)) ? undefined : ofLastCalculation()?.[row]?.[column];
    if (ofThisPassSeries) empty(spilled(), ofThisPassSeries);
    delete spills()?.[column];
    setRuntimeData(answer);
    const now = present();
    for (const earlier of [ofThisPassSeries, ofLastTime]) {
      if (!earlier || (now && now.endRow >= earlier.endRow && now.endColumn >= earlier.endColumn)) continue;
      const wasThere = earlier === ofThisPassSeries || stale?.getValue(earlier.endRow, earlier.endColumn) != null;
      const waiting = waitingFor(earlier, ofLastCalculation(), (r, c) => isBlocked(values()?.getValue(r, c) ?? stale?.getValue(r, c)));
      empty(stale, earlier);
      if (wasThere) leftBehind.push(...[earlier, ...waiting].map((range) => ({ unitId, sheetId, range })));
    }
  };
  return leftBehind;
}

function empty(cells: ObjectMatrix<unknown> | undefined, { startRow, endRow, startColumn, endColumn }: IRange): void {
  for (let row = startRow; row <= endRow; row++)
    for (let column = startColumn; column <= endColumn; column++) cells?.realDeleteValue(row, column);
}

/** What stands in each spill, as one text, by the cell that it comes from. */
function contents(spills: SpillRanges, runtime: IFormulaRuntimeService): Map<string, { at: DirtyRange; text: string }> {
  const found = new Map<string, { at: DirtyRange; text: string }>();
  for (const [unitId, sheets] of Object.entries(spills)) {
    for (const [sheetId, rows] of Object.entries(sheets ?? {})) {
      const cells = runtime.getRuntimeArrayFormulaCellData()[unitId]?.[sheetId];
      for (const [row, columns] of Object.entries(rows)) {
        for (const [column, range] of Object.entries(columns ?? {})) {
          const values: unknown[] = [range.endRow, range.endColumn];
          for (let r = range.startRow; r <= range.endRow; r++)
            for (let c = range.startColumn; c <= range.endColumn; c++) values.push(cells?.getValue(r, c)?.v);
          found.set(`${unitId}!${sheetId}!${row},${column}`, { at: { unitId, sheetId, range }, text: JSON.stringify(values) });
        }
      }
    }
  }
  return found;
}

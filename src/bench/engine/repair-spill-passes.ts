import type { IRange, Injector } from "@univerjs/core";
import {
  FORMULA_REF_TO_ARRAY_CACHE, ICalculateFormulaService, IFormulaCurrentConfigService, IFormulaRuntimeService,
} from "@univerjs/engine-formula";

/** The steps of a calculation that the engine keeps to itself. */
interface Passes {
  _executeStep(): Promise<true | undefined>;
  _apply(afterSpills?: boolean): Promise<RuntimeState | undefined>;
  _getArrayFormulaDirtyRangeAndExcludedRange(spills: SpillRanges, features: RuntimeState["runtimeFeatureRange"]): { dirtyRanges: DirtyRange[] };
}

interface RuntimeState {
  arrayFormulaRange: SpillRanges;
  runtimeFeatureRange: Record<string, unknown>;
}

type SpillRanges = Record<string, Record<string, Record<number, Record<number, IRange>>>>;
interface DirtyRange { unitId: string; sheetId: string; range: IRange }

/** Deeper chains of spills than this are left as they are, so that two spills that feed each other come to an end. */
const mostPasses = 30;

/**
 * A formula that reads spilled cells cannot be put in order before it is known where answers spill to. The engine
 * calculates once more for what reads the spills, and leaves out the spills themselves: a spill that hangs on another
 * one, by way of plain formulas, kept the answer of before. Here the passes go on until no spill changes any more.
 */
export function repairSpillPasses(injector: Injector): void {
  const service = injector.get(ICalculateFormulaService) as unknown as Passes;
  const config = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  service._executeStep = async () => {
    const first = await service._apply();
    if (!first) return undefined;
    let { dirtyRanges } = service._getArrayFormulaDirtyRangeAndExcludedRange(first.arrayFormulaRange, first.runtimeFeatureRange);
    for (let pass = 0; pass < mostPasses && dirtyRanges.length > 0; pass++) {
      const before = contents(first.arrayFormulaRange, runtime);
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      config.loadDirtyRangesAndExcludedCell(dirtyRanges, {});
      const state = await service._apply(true);
      if (!state) return undefined;
      dirtyRanges = [...contents(state.arrayFormulaRange, runtime)].filter(([key, { text }]) => before.get(key)?.text !== text).map(([, { at }]) => at);
    }
    return true;
  };
}

/** What stands in each spill, as one text, by the cell that it comes from. */
function contents(spills: SpillRanges, runtime: IFormulaRuntimeService): Map<string, { at: DirtyRange; text: string }> {
  const found = new Map<string, { at: DirtyRange; text: string }>();
  for (const [unitId, sheets] of Object.entries(spills)) {
    for (const [sheetId, rows] of Object.entries(sheets)) {
      const cells = runtime.getRuntimeArrayFormulaCellData()[unitId]?.[sheetId];
      for (const [row, columns] of Object.entries(rows)) {
        for (const [column, range] of Object.entries(columns)) {
          const values: unknown[] = [range.endRow, range.endColumn];
          for (let r = range.startRow; r <= range.endRow; r++) for (let c = range.startColumn; c <= range.endColumn; c++) values.push(cells?.getValue(r, c)?.v);
          found.set(`${unitId}!${sheetId}!${row},${column}`, { at: { unitId, sheetId, range }, text: JSON.stringify(values) });
        }
      }
    }
  }
  return found;
}

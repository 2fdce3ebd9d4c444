import type { IRange, Injector } from "@univerjs/core";
import {
  BaseFunction,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  IFunctionService,
  type BaseReferenceObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";
import { ANCHOR_ARRAY } from "./call-for-spills";

type SpillRanges = Record<string, Record<string, Record<number, Record<number, IRange> | undefined> | undefined> | undefined>;

/** `A1#`: the cells that the formula in A1 spills over, as far as they reach at the time of calculating. */
class SpillReference extends BaseFunction {
  override minParams = 1;
  override maxParams = 1;
  override needsReferenceObject = true;

  constructor(private readonly injector: Injector) {
    super(ANCHOR_ARRAY);
  }

  /** The answer is a reference, which other formulas depend on as on one that is written out. */
  override isAddress(): boolean {
    return true;
  }

  override calculate(reference: FunctionVariantType): FunctionVariantType {
    if (!reference.isReferenceObject()) return reference;
    const anchor = reference as BaseReferenceObject;
    const { startRow, startColumn } = anchor.getRangePosition();
    const extent = this.extentAt(anchor.getUnitId(), anchor.getSheetId(), startRow, startColumn);
    return extent === undefined ? anchor : this.createReferenceObject(anchor, extent);
  }

  /** As calculated just now, or else last time. */
  private extentAt(unitId: string, sheetId: string, row: number, column: number): IRange | undefined {
    const runtime = this.injector.get(IFormulaRuntimeService);
    const now = (runtime.getUnitArrayFormula() as SpillRanges)[unitId]?.[sheetId]?.[row]?.[column];
    const isCalculated = runtime.getUnitData()[unitId]?.[sheetId]?.getValue(row, column) != null;
    const config = this.injector.get(IFormulaCurrentConfigService);
    return now ?? (isCalculated ? undefined : (config.getArrayFormulaRange() as SpillRanges)[unitId]?.[sheetId]?.[row]?.[column]);
  }
}

export function installSpillReferences(injector: Injector): void {
  injector.get(IFunctionService).registerExecutors(new SpillReference(injector));
}

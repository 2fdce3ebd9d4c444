import { IResourceManagerService, UniverInstanceType, type Injector } from "@univerjs/core";
import { CopySheetCommand, SheetInterceptorService } from "@univerjs/sheets";
import { SHEET_EXTRAS_RESOURCE, type CellBlock, type SheetExtras, type WorkbookExtras } from "./sheet-extras";

/** The extras of the open workbooks, saved and restored with the workbook's snapshot. */
export class ExtrasStore {
  private readonly byUnit = new Map<string, WorkbookExtras>();
  private readonly listeners: ((sheetId: string) => void)[] = [];

  constructor(injector: Injector) {
    injector.get(IResourceManagerService).registerPluginResource<WorkbookExtras>({
      // The grid's type asks for the names its own plugins use; any name is saved and restored.
      pluginName: SHEET_EXTRAS_RESOURCE as `SHEET_${string}_PLUGIN`,
      businesses: [UniverInstanceType.UNIVER_SHEET],
      toJson: (unitId) => JSON.stringify(this.of(unitId)),
      parseJson: (text) => JSON.parse(text) as WorkbookExtras,
      onLoad: (unitId, extras) => { this.byUnit.set(unitId, { ...extras, sheets: extras.sheets ?? {} }); },
      onUnLoad: (unitId) => { this.byUnit.delete(unitId); },
    });
    this.followCopies(injector);
  }

  of(unitId: string): WorkbookExtras {
    let extras = this.byUnit.get(unitId);
    if (!extras) this.byUnit.set(unitId, (extras = { sheets: {} }));
    return extras;
  }

  ofSheet(unitId: string, sheetId: string): SheetExtras {
    return (this.of(unitId).sheets[sheetId] ??= {});
  }

  /** Changes a sheet's extras and tells whoever draws them. */
  update(unitId: string, sheetId: string, change: (extras: SheetExtras) => void): void {
    change(this.ofSheet(unitId, sheetId));
    for (const listener of this.listeners) listener(sheetId);
  }

  onChange(listener: (sheetId: string) => void): void {
    this.listeners.push(listener);
  }

  /** A copied sheet has the same page layout, and charts over its own cells. */
  private followCopies(injector: Injector): void {
    injector.get(SheetInterceptorService).interceptCommand({
      getMutations: (command) => {
        const { unitId, subUnitId, targetSubUnitId } = (command.params ?? {}) as Record<string, string>;
        if (command.id === CopySheetCommand.id && unitId && subUnitId && targetSubUnitId) {
          this.of(unitId).sheets[targetSubUnitId] = copyFor(this.ofSheet(unitId, subUnitId), subUnitId, targetSubUnitId);
        }
        return { redos: [], undos: [] };
      },
    });
  }
}

function copyFor(extras: SheetExtras, from: string, to: string): SheetExtras {
  const copy = structuredClone(extras);
  delete copy.tables; // the copied tables have ids of their own
  const move = (block: CellBlock | undefined): void => {
    if (block?.sheetId === from) block.sheetId = to;
  };
  for (const series of copy.charts?.flatMap((chart) => chart.series) ?? []) {
    [series.nameFrom, series.xValues, series.values].forEach(move);
  }
  return copy;
}

import { ICommandService, IResourceManagerService, UniverInstanceType, type Injector } from "@univerjs/core";
import { CopySheetCommand, SheetInterceptorService } from "@univerjs/sheets";
import { AddSheetTableMutation, TableManager } from "@univerjs/sheets-table";
import { SHEET_EXTRAS_RESOURCE, type CellBlock, type SheetExtras, type TableLook, type WorkbookExtras } from "./sheet-extras";

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
      onLoad: (unitId, extras) => {
        this.byUnit.set(unitId, { ...extras, sheets: extras.sheets ?? {} });
      },
      onUnLoad: (unitId) => {
        this.byUnit.delete(unitId);
      },
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

  /** Whether the table that begins where `range` does has a row of totals. */
  hasTotals(
    injector: Injector,
    unitId: string,
    sheetId: string,
    range: { readonly startRow: number; readonly startColumn: number },
  ): boolean {
    const looks = this.of(unitId).sheets[sheetId]?.tables;
    if (!looks) return false;
    return injector
      .get(TableManager)
      .getTablesBySubunitId(unitId, sheetId)
      .some((table) => {
        const { startRow, startColumn } = table.getRange();
        return startRow === range.startRow && startColumn === range.startColumn && looks[table.getId()]?.showTotals === true;
      });
  }

  /** Changes a sheet's extras and tells whoever draws them. */
  update(unitId: string, sheetId: string, change: (extras: SheetExtras) => void): void {
    change(this.ofSheet(unitId, sheetId));
    for (const listener of this.listeners) listener(sheetId);
  }

  onChange(listener: (sheetId: string) => void): void {
    this.listeners.push(listener);
  }

  /** A copied sheet has the same page layout, charts over its own cells, and tables that look alike under ids of their own. */
  private followCopies(injector: Injector): void {
    const looks = new Map<string, TableLook>();
    const place = (sheetId: string, { startRow, startColumn }: { readonly startRow: number; readonly startColumn: number }): string =>
      `${sheetId} ${startRow},${startColumn}`;
    injector.get(SheetInterceptorService).interceptCommand({
      getMutations: (command) => {
        const { unitId, subUnitId, targetSubUnitId } = (command.params ?? {}) as Record<string, string>;
        if (command.id === CopySheetCommand.id && unitId && subUnitId && targetSubUnitId) {
          this.of(unitId).sheets[targetSubUnitId] = copyFor(this.ofSheet(unitId, subUnitId), subUnitId, targetSubUnitId);
          for (const table of injector.get(TableManager).getTablesBySubunitId(unitId, subUnitId)) {
            const look = this.ofSheet(unitId, subUnitId).tables?.[table.getId()];
            if (look) looks.set(place(targetSubUnitId, table.getRange()), look);
          }
        }
        return { redos: [], undos: [] };
      },
    });
    injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
      if (id !== AddSheetTableMutation.id || looks.size === 0) return;
      const { unitId, subUnitId, tableId, range } = params as {
        readonly unitId: string;
        readonly subUnitId: string;
        readonly tableId: string;
        readonly range: Parameters<typeof place>[1];
      };
      const look = looks.get(place(subUnitId, range));
      if (look) (this.ofSheet(unitId, subUnitId).tables ??= {})[tableId] = structuredClone(look);
    });
  }
}

function copyFor(extras: SheetExtras, from: string, to: string): SheetExtras {
  const copy = structuredClone(extras);
  delete copy.tables; // the copied tables have ids of their own, given later
  const move = (block: CellBlock | undefined): void => {
    if (block?.sheetId === from) block.sheetId = to;
  };
  for (const series of copy.charts?.flatMap((chart) => chart.series) ?? []) {
    [series.nameFrom, series.xValues, series.values].forEach(move);
  }
  return copy;
}

import type { IFreeze, IRange, IWorksheetData } from "@univerjs/core";
import type { Sheet, WriteSheet } from "hucre/xlsx";
import { colorFromFile, colorToFile } from "./colors";

/** Visibility, tab colour, gridlines, zoom, frozen panes and merged cells of a sheet, for the grid. */
export function viewFromFile(sheet: Sheet, theme: string[] | undefined): Partial<IWorksheetData> {
  const rows = sheet.freezePane?.rows ?? 0;
  const columns = sheet.freezePane?.columns ?? 0;
  return {
    name: sheet.name,
    hidden: sheet.hidden || sheet.veryHidden ? 1 : 0,
    tabColor: colorFromFile(sheet.view?.tabColor, theme) ?? "",
    showGridlines: sheet.view?.showGridLines === false ? 0 : 1,
    zoomRatio: (sheet.view?.zoomScale ?? 100) / 100,
    rightToLeft: sheet.view?.rightToLeft ? 1 : 0,
    ...(rows || columns ? { freeze: { xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 } } : {}),
    mergeData: (sheet.merges ?? []).map((merge) => ({
      startRow: merge.startRow,
      startColumn: merge.startCol,
      endRow: merge.endRow,
      endColumn: merge.endCol,
    })),
  };
}

export function viewToFile(sheet: Partial<IWorksheetData>, carried: Sheet | undefined): Partial<WriteSheet> {
  const tabColor = colorToFile(sheet.tabColor);
  const zoom = Math.round((sheet.zoomRatio ?? 1) * 100);
  const freezePane = frozen(sheet.freeze);
  return {
    hidden: Boolean(sheet.hidden) && !carried?.veryHidden,
    veryHidden: Boolean(sheet.hidden) && carried?.veryHidden === true,
    view: {
      ...(sheet.showGridlines === 0 ? { showGridLines: false } : {}),
      ...(carried?.view?.showRowColHeaders === false ? { showRowColHeaders: false } : {}),
      ...(zoom !== 100 ? { zoomScale: zoom } : {}),
      ...(sheet.rightToLeft ? { rightToLeft: true } : {}),
      ...(tabColor ? { tabColor: { rgb: tabColor } } : {}),
    },
    freezePane,
    splitPane: freezePane ? undefined : carried?.splitPane,
    merges: (sheet.mergeData ?? []).filter(isRange).map((merge) => ({
      startRow: merge.startRow,
      startCol: merge.startColumn,
      endRow: merge.endRow,
      endCol: merge.endColumn,
    })),
  };
}

function frozen(freeze: IFreeze | undefined): WriteSheet["freezePane"] {
  if (!freeze || (freeze.xSplit <= 0 && freeze.ySplit <= 0)) return undefined;
  // The file counts from the visible top; the grid may have been scrolled when the panes were frozen.
  const rows = freeze.ySplit > 0 ? freeze.startRow : 0;
  const columns = freeze.xSplit > 0 ? freeze.startColumn : 0;
  return { ...(rows > 0 ? { rows } : {}), ...(columns > 0 ? { columns } : {}) };
}

const isRange = (range: IRange | null | undefined): range is IRange => range !== null && range !== undefined;

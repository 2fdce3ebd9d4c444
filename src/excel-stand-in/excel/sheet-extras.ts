/**
 * What a worksheet carries that the free grid cannot hold: page layout, charts, table looks, protection options.
 * It lives in the workbook's snapshot as the resource `GYLE_SHEET_EXTRAS`, so it survives `save()` and reaches the xlsx writer.
 * What the grid does hold stays in the grid's own snapshot: tab colour, gridlines, frozen panes, merges, notes, validation,
 * conditional formats, defined names (`localSheetId` = the sheet's id, or "AllDefaultWorkbook").
 * An indent of n levels is left padding of 9 n pixels in the cell's style (`pd.l`).
 * A cell that sheet protection leaves open has `custom: { unlocked: true }` in its cell data (Excel's default is locked).
 */
export const SHEET_EXTRAS_RESOURCE = "GYLE_SHEET_EXTRAS";

/** The whole resource; every part is optional so that files of other origin load. */
export interface WorkbookExtras {
  sheets: Record<SheetId, SheetExtras>;
  properties?: DocumentProperties;
  /** What add-ins keep in the file through `Office.context.document.settings`. */
  settings?: Record<string, unknown>;
  /** Present means that sheets cannot be added, deleted, renamed, moved or hidden. */
  workbookProtection?: { hasPassword?: boolean };
}

export type SheetId = string;

export interface SheetExtras {
  pageLayout?: PageLayout;
  /** Address without the sheet's name, such as "A1:H80". */
  printArea?: string;
  /** Rows repeated on every page, such as "$1:$3". */
  printTitleRows?: string;
  /** Zero-based rows; the page breaks above each. */
  horizontalPageBreaks?: number[];
  charts?: ChartRecord[];
  /** Hidden so that only a program can show the sheet again. */
  veryHidden?: boolean;
  /** By the id of the grid's table. */
  tables?: Record<string, TableLook>;
  /** Present means protected. Flags are those of Excel's WorksheetProtectionOptions. */
  protection?: SheetProtection;
}

export interface DocumentProperties {
  title?: string;
  author?: string;
  subject?: string;
  comments?: string;
  keywords?: string;
  category?: string;
  company?: string;
  manager?: string;
}

export interface PageLayout {
  orientation?: "Portrait" | "Landscape";
  /** Excel's names: "A4", "Letter". */
  paperSize?: string;
  /** Either a scale in per cent, or fit to so many pages (0 or absent: as many as it takes). */
  zoom?: { scale?: number; horizontalFitToPages?: number; verticalFitToPages?: number };
  /** Margins in points. */
  leftMargin?: number;
  rightMargin?: number;
  topMargin?: number;
  bottomMargin?: number;
  headerMargin?: number;
  footerMargin?: number;
  centerHorizontally?: boolean;
  centerVertically?: boolean;
  printGridlines?: boolean;
  blackAndWhite?: boolean;
  /** Texts may hold Excel's codes: &P page, &N pages, &A sheet, &F file, &D date. */
  headerFooter?: Partial<Record<HeaderFooterPlace, string>>;
}

export type HeaderFooterPlace = "leftHeader" | "centerHeader" | "rightHeader" | "leftFooter" | "centerFooter" | "rightFooter";

/** A block of cells by sheet id, zero-based, so that renaming a sheet does not break it. */
export interface CellBlock {
  sheetId: SheetId;
  row: number;
  column: number;
  rowCount: number;
  columnCount: number;
}

export interface ChartRecord {
  id: string;
  name: string;
  /** Excel.ChartType value, such as "Line" or "XYScatterLines". */
  type: string;
  title?: string;
  /** Points, of the title and of everything else. */
  titleSize?: number;
  fontSize?: number;
  showLegend?: boolean;
  legendPosition?: string;
  series: ChartSeriesRecord[];
  /** Points from the sheet's top left corner. */
  position: { left: number; top: number; width: number; height: number };
  /** The cells it was laid over, if it was placed by cells; the position then follows them. */
  anchor?: { startCell: string; endCell?: string };
  axes: { category: ChartAxisRecord; value: ChartAxisRecord; secondary?: ChartAxisRecord };
}

export interface ChartSeriesRecord {
  name?: string;
  /** A cell holding the name, if it was taken from the data's heading. */
  nameFrom?: CellBlock;
  xValues?: CellBlock;
  values?: CellBlock;
  color?: string;
  /** On the second value axis. */
  secondary?: boolean;
  /** Excel.ChartType where it differs from the chart's own. */
  type?: string;
  /** Excel.ChartLineStyle, such as "Dash"; the weight is in points. */
  lineStyle?: string;
  lineWeight?: number;
  /** Excel.ChartMarkerStyle, such as "Diamond"; the size is in points. */
  markerStyle?: string;
  markerSize?: number;
  /** Left out of the legend. */
  unlisted?: boolean;
}

export interface ChartAxisRecord {
  title?: string;
  minimum?: number;
  maximum?: number;
  numberFormat?: string;
}

export interface TableLook {
  /** Excel's built-in style name, such as "TableStyleLight1". */
  style?: string;
  showBandedRows?: boolean;
  showBandedColumns?: boolean;
  showFilterButton?: boolean;
  showHeaders?: boolean;
  /** The totals row lies directly below the grid's table range, which leaves it out. */
  showTotals?: boolean;
}

export interface SheetProtection {
  options: Partial<Record<ProtectionFlag, boolean>> & { selectionMode?: "Normal" | "Unlocked" | "None" };
  /** Never the password itself; true if Excel would ask for one. */
  hasPassword?: boolean;
}

export type ProtectionFlag =
  | "allowAutoFilter"
  | "allowDeleteColumns"
  | "allowDeleteRows"
  | "allowEditObjects"
  | "allowEditScenarios"
  | "allowFormatCells"
  | "allowFormatColumns"
  | "allowFormatRows"
  | "allowInsertColumns"
  | "allowInsertHyperlinks"
  | "allowInsertRows"
  | "allowPivotTables"
  | "allowSort";

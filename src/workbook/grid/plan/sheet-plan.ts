/**
 * What a sheet holds, as plain data: nothing here knows Excel. `write/` carries a plan into a workbook,
 * tests and the sample workbooks read the very same data.
 */
export type StyleName =
  | "title"
  | "section"
  | "sectionHint"
  | "label"
  | "unit"
  | "hint"
  | "hintWords"
  | "heading"
  | "headingRight"
  | "input"
  | "inputText"
  | "inputWords"
  | "result"
  | "resultText"
  | "keyResult"
  | "keyText"
  | "caution"
  | "message"
  | "state"
  | "swatch"
  | "workings";

export type NumberFormat =
  | "general"
  | "gravity"
  | "fineGravity"
  | "one"
  | "two"
  | "whole"
  | "percent"
  | "date"
  | "time"
  | "dateTime"
  | "monthDay"
  | "text"
  | "money";

export type CellContent = number | string;

export interface CellPlan {
  /** "B7"; where a block is merged, its top left cell. */
  readonly address: string;
  /** A constant, or a formula when it begins with "=". Empty cells are planned too when they carry a style. */
  readonly content: CellContent;
  readonly style: StyleName;
  readonly format?: NumberFormat;
  /** Last column of a merged block in the same row. */
  readonly mergeTo?: string;
  /** Last cell of the block that the formula's answer spills into: those cells must stay empty. */
  readonly spillsTo?: string;
}

export interface NamePlan {
  readonly name: string;
  /** "B7" or "B20:E27", on this sheet. */
  readonly range: string;
}

export interface TablePlan {
  /** Unique within a workbook once the sheet's own ending is added by the writer. */
  readonly name: string;
  /** Header row included. */
  readonly range: string;
}

/** What may be typed into a range, in the words that the brewer sees when it is something else. */
export type ValidationPlan =
  | { readonly kind: "list"; readonly range: string; readonly choices: readonly string[]; readonly message: string }
  | { readonly kind: "decimal"; readonly range: string; readonly from: number; readonly to: number; readonly message: string };

export interface NotePlan {
  readonly address: string;
  readonly text: string;
}

/** A cell that changes its look while a native formula is true. */
export interface HighlightPlan {
  readonly range: string;
  readonly formula: string;
  readonly fill?: string;
  readonly color?: string;
  readonly bold?: boolean;
}

/** A chart of figures against days or dates, or of columns. Its series differ in more than colour, so that a black-and-white print can be read. */
export interface ChartPlan {
  readonly name: string;
  readonly title: string;
  readonly horizontal: ChartAxisPlan;
  readonly vertical: ChartAxisPlan;
  /** A second height at the right, for the series that ask for it. */
  readonly secondary?: ChartAxisPlan;
  readonly series: readonly [ChartSeriesPlan, ...ChartSeriesPlan[]];
  /** Block of cells that the chart covers. */
  readonly from: string;
  readonly to: string;
}

export interface ChartAxisPlan {
  readonly format: NumberFormat;
  readonly title?: string;
  /** From and to; what is left out the program chooses by the figures. Chosen so, a difference of one would be drawn as a cliff. */
  readonly span?: readonly [from: number, to?: number];
}

export interface ChartSeriesPlan {
  readonly name: string;
  /** Cells in a column or a row. A text among them would be drawn at 0, and an empty cell is passed over. */
  readonly across: string;
  readonly values: string;
  readonly color: string;
  /** Columns stand alone: they are not mixed with the others. */
  readonly look: "marks" | "line" | "dashes" | "dots with marks" | "columns";
  readonly onSecondary?: true;
  /** Drawn, but left out of the key: the other edge of a band that is named already. */
  readonly unnamed?: true;
}

export interface PrintPlan {
  readonly area: string;
  readonly paper: "a4" | "letter";
  /** Upright unless said otherwise. */
  readonly landscape?: boolean;
  /** All of it on one page; otherwise only the width is fitted, and the height takes the pages that it takes. */
  readonly onePage?: true;
  /** Rows before which a new page begins. */
  readonly breaksBeforeRow: readonly number[];
  readonly footer: string;
}

export interface SheetPlan {
  readonly sheetName: string;
  /** In characters of the default font, from column A on. */
  readonly columnWidths: readonly number[];
  readonly rowHeights: readonly { readonly row: number; readonly points: number }[];
  readonly cells: readonly CellPlan[];
  readonly names: readonly NamePlan[];
  readonly tables: readonly TablePlan[];
  readonly validations: readonly ValidationPlan[];
  readonly notes: readonly NotePlan[];
  readonly highlights: readonly HighlightPlan[];
  readonly charts: readonly ChartPlan[];
  readonly print: PrintPlan;
  /** First row that scrolls. */
  readonly frozenRows: number;
}

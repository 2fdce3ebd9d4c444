import type { Locale } from "./locale";

/**
 * Ways in which somebody's Excel may be worse than the best one. None does until a test, or whoever tries the page, sets them;
 * they hold from the next round trip on.
 */
export interface Switches {
  /**
   * The n of the newest ExcelApi 1.n that this Excel has, 12 or more: 14 is Excel 2021 under volume licence, 17 Excel 2024. Absent, all
   * is there that the stand-in offers.
   */
  excelApi?: number | undefined;
  /** Excel does not know the add-in's functions yet: formulas with them that are entered now stay #NAME? until they are entered again. */
  functionsUnknown: boolean;
  /** A sheet's names list the workbook's names too (OfficeDev/office-js issue 1011). */
  workbookNamesOnSheets: boolean;
  /** The person looks at another workbook: a sheet's names cannot be read (OfficeDev/office-js issue 6365). */
  otherWorkbookInFront: boolean;
  /** A cell that a formula spills into answers with that formula, not with its value. */
  spilledFormulas: boolean;
  /** How the person's Excel writes numbers and formulas. */
  locale: Locale["name"];
}

export const theBestExcel = (): Switches => ({
  excelApi: undefined,
  functionsUnknown: false,
  workbookNamesOnSheets: false,
  otherWorkbookInFront: false,
  spilledFormulas: false,
  locale: "en-US",
});

/** How the grid writes "this name belongs to the whole workbook" (its own constant is not exported everywhere). */
export const WORKBOOK_SCOPE = "AllDefaultWorkbook";

/** The sheet a name belongs to; undefined for the whole workbook. */
export const scopeOf = (name: { localSheetId?: string }): string | undefined =>
  !name.localSheetId || name.localSheetId === WORKBOOK_SCOPE ? undefined : name.localSheetId;

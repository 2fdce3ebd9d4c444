/** Whether this Excel knows notes, which keep the GYLE formulas of an unplugged copy (ExcelApi 1.18; Excel 2021 and 2024 under volume licence lack it). */
export const canPlugInAgain = (): boolean => Office.context.requirements.isSetSupported("ExcelApi", "1.18");

import { CELL_ERRORS, type CellErrorText } from "./computed-values";

/**
 * hucre 1.0.0 writes an error that a formula gave as text (`t="str"`). It is handed a marked text instead, and the mark
 * is turned into an error cell (`t="e"`) in the finished sheet.
 */
const MARK = "gyle-error:";

export const markedError = (error: CellErrorText): string => MARK + error;

const MARKED_CELL = new RegExp(
  `<c ([^>]*?)t="str"([^>]*)>(<f[^>]*>[^<]*</f>)<v>${MARK}(${CELL_ERRORS.join("|").replaceAll("?", "\\?")})</v>`,
  "g",
);

export const errorsFromMarks = (sheetXml: string): string => sheetXml.replace(MARKED_CELL, '<c $1t="e"$2>$3<v>$4</v>');

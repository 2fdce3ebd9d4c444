import { isExcel } from "../parts/is-excel";

/** What became of a new workbook: Excel opens it in a window, the bench hands it over as a file. */
export const newWorkbookWords = (content: string): string =>
  isExcel()
    ? `The new workbook is open, with ${content}: save it under a name of its own and hand it on.`
    : `A new workbook with ${content} was saved as a file: hand that on.`;

import type { BatchSheet } from "../../batch/read/batch-sheets";
import { canPlugInAgain } from "./can-plug-in";
import { address, block as blockOf } from "../../grid/plan/addresses";
import type { CellValue } from "../../grid/read/named-cells";
import { changedCell, keptOnSheet } from "./kept-on-sheet";

/**
 * Unplugged sheets with the formulas that plugging in would put back; what they show stays. Where somebody has typed over
 * what was written for a formula, or rows have moved, what stands there now counts. Two `context.sync()` for any number of sheets.
 */
export async function asPlugged(context: Excel.RequestContext, sheets: readonly BatchSheet[]): Promise<BatchSheet[]> {
  if (!canPlugInAgain()) return [...sheets];
  const notes = sheets.map(({ sheetName }) => context.workbook.worksheets.getItem(sheetName).notes.load("items/content"));
  await context.sync();
  const asked = notes.map(keptOnSheet);
  await context.sync();
  return sheets.map((sheet, index) => {
    const formulas = new Map<string, CellValue>();
    for (const kept of asked[index]?.() ?? []) {
      if (changedCell(kept, (row, column) => sheet.formulaAt(row, column))) continue;
      const { from, to } = blockOf(kept.block);
      for (let row = from.row; row <= to.row; row += 1)
        for (let column = from.column; column <= to.column; column += 1) formulas.set(address(row, column), sheet.at(row, column));
      formulas.set(kept.cell, kept.formula);
    }
    return sheet.withFormulas(formulas);
  });
}

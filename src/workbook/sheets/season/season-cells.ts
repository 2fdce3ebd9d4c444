import type { CellContent, CellPlan } from "../../grid/plan/sheet-plan";
import { cellText } from "../../grid/words/cell-text";
import { batchCells, columns, keptCells, keptColumns, typedColumns, workingColumns } from "./season-columns";
import type { SeasonRow } from "./season-rows";

/** Our cells of one row of the list, with their looks. */
export function rowCells(row: SeasonRow, at: number): CellPlan[] {
  const contents = rowContents(row, at);
  return columns.map(({ letter, style, format }) => ({ address: `${letter}${at}`, content: contents.get(letter) ?? "", style, format }));
}

/** By column: what stands in a row, first of all what the brewer typed. A batch without its sheet, or whose year is closed, shows what is kept of it. */
export function rowContents(row: SeasonRow, at: number): ReadonlyMap<string, CellContent> {
  const { sheetName, id, lastName, left, remark, closed, kept, kegCell, hasParts } = row;
  const ours =
    sheetName === undefined || closed !== ""
      ? keptCells(lastName, id, at, sheetName)
      : batchCells(sheetName, id, at, { kegCell, hasParts });
  return new Map([
    ...ours,
    ...keptColumns.map(({ at: letters }, index) => [letters, keptContent(kept[index] ?? "")] as const),
    [typedColumns.left, left],
    [typedColumns.remark, remark],
    [workingColumns.closed, closed],
  ]);
}

/** Names as the words that they are. */
export const keptContent = (kept: CellContent): CellContent => (typeof kept === "string" ? cellText(kept) : kept);

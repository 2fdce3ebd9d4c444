import type { CellContent, CellPlan } from "../../grid/plan/sheet-plan";
import { batchCells, columns, typedColumns, workingColumns } from "./season-columns";
import type { SeasonRow } from "./season-rows";

/** Our cells of one row of the list, with their looks. */
export function rowCells(row: SeasonRow, at: number): CellPlan[] {
  const contents = rowContents(row, at);
  return columns.map(({ letter, style, format }) => ({ address: `${letter}${at}`, content: contents.get(letter) ?? "", style, format }));
}

/** By column: what stands in a row, first of all what the brewer typed. A batch without its sheet keeps only that. */
export function rowContents({ sheetName, id, lastName, left, remark }: SeasonRow, at: number): ReadonlyMap<string, CellContent> {
  const ours = sheetName === undefined ? goneCells(lastName, id) : batchCells(sheetName, id, at);
  return new Map([...ours, [typedColumns.left, left], [typedColumns.remark, remark]]);
}

const goneCells = (lastName: string, id: string): ReadonlyMap<string, CellContent> =>
  new Map<string, CellContent>([
    ["B", lastName],
    ["E", "sheet deleted"],
    [workingColumns.sheet, lastName],
    [workingColumns.id, id],
  ]);

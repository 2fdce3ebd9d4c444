import { address, columnNumber, position } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import { sheetOfName } from "../../grid/words/sheet-reference";
import { moved } from "./own-cells";
import { firstOwnColumn, lastColumn, typedColumns, workingColumns } from "./season-columns";
import { firstRowName } from "./season-plan";
import type { PresentRow } from "./season-rows";

/** The list as it stands on the sheet. */
export interface PresentList {
  readonly firstRow: number;
  readonly rows: readonly PresentRow[];
  /** How many columns to the right of ours hold something in any row of the list, or below it. */
  readonly ownWidth: number;
}

const at = (letter: string): number => columnNumber(letter);

/** Reads the list from its first row down to the first row that is none of ours. */
export function presentList(sheet: NamedCells): PresentList {
  const firstRow = sheet.area(firstRowName).from.row;
  const formula = (row: number, letter: string): CellContent => plain(sheet.formulaAt(row, at(letter)));
  const isRow = (row: number): boolean =>
    formula(row, workingColumns.sheet) !== "" || sheetOfName(String(formula(row, "B")), "batch_name") !== undefined;
  let rowCount = 0;
  while (isRow(firstRow + rowCount)) rowCount += 1;
  const ownWidth = widthBeyond(sheet, firstRow);
  const rows = Array.from({ length: rowCount }, (_, index): PresentRow => {
    const row = firstRow + index;
    const sheetName = sheetOfName(String(formula(row, "B")), "batch_name");
    return {
      sheetName,
      id: String(formula(row, workingColumns.id)),
      lastName: String(formula(row, workingColumns.sheet)) || (sheetName ?? ""),
      settled: String(formula(row, "B")).startsWith("=") !== (sheetName === undefined),
      left: formula(row, typedColumns.left),
      remark: formula(row, typedColumns.remark),
      own: Array.from({ length: ownWidth }, (_2, offset) => {
        const column = at(firstOwnColumn) + offset;
        return moved.up(plain(sheet.formulaAt(row, column)), address(row, column));
      }),
    };
  });
  return { firstRow, rows, ownWidth };
}

/** The first cell at or below `from` in our columns or the brewer's own that holds something, down to `to`. */
export function inTheWay(sheet: NamedCells, from: number, to: number, ownWidth: number): string | undefined {
  for (let row = from; row <= to; row += 1) {
    for (let column = 1; column < at(firstOwnColumn) + ownWidth; column += 1) {
      if (column > at(lastColumn) && column < at(firstOwnColumn)) continue;
      if (sheet.formulaAt(row, column) !== "") return address(row, column);
    }
  }
  return undefined;
}

function widthBeyond(sheet: NamedCells, firstRow: number): number {
  let width = 0;
  for (const { address: filled } of sheet.filled()) {
    const { row, column } = position(filled);
    if (row >= firstRow) width = Math.max(width, column - at(firstOwnColumn) + 1);
  }
  return width;
}

const plain = (content: number | string | boolean): CellContent =>
  typeof content === "boolean" ? `=${String(content).toUpperCase()}` : content;

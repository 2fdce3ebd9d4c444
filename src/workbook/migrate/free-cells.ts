import { address, block, type Position } from "../plan/addresses";
import { batchMark } from "../read/batch-sheets";
import type { NamedCells } from "../read/named-cells";
import type { AddedCell } from "./steps";

export interface Spot {
  readonly label: string;
  readonly cell: string;
}

/**
 * Where the cells that a newer plan adds can go: where that plan has them, as seen from the mark (rows may have been put
 * in above), or below everything that stands on the sheet if somebody uses those cells. Nothing that is filled is taken.
 */
export function freeCells(sheet: NamedCells, added: readonly AddedCell[]): Spot[] {
  const mark = block(sheet.range(batchMark)).from;
  let nextRow = lastRow(sheet) + 2;
  return added.map(({ labelAt, at }) => {
    const [label, cell] = [move(mark, labelAt), move(mark, at)];
    if (isFree(sheet, label) && isFree(sheet, cell)) return { label: address(label.row, label.column), cell: address(cell.row, cell.column) };
    const row = nextRow++;
    return { label: address(row, Math.max(1, mark.column - 1)), cell: address(row, Math.max(2, mark.column)) };
  });
}

const move = (from: Position, [down, right]: readonly [number, number]): Position => ({ row: from.row + down, column: from.column + right });

const isFree = (sheet: NamedCells, { row, column }: Position): boolean =>
  row >= 1 && column >= 1 && sheet.formulaAt(row, column) === "" && sheet.at(row, column) === "" && !isNamed(sheet, row, column);

/** An empty cell with a name is somebody's all the same. */
function isNamed(sheet: NamedCells, row: number, column: number): boolean {
  return sheet.names().some((name) => {
    const { from, to } = sheet.area(name);
    return row >= from.row && row <= to.row && column >= from.column && column <= to.column;
  });
}

function lastRow(sheet: NamedCells): number {
  let last = 1;
  for (const name of sheet.names()) last = Math.max(last, sheet.area(name).to.row);
  for (const { address: filled } of sheet.filled()) last = Math.max(last, block(filled).to.row);
  return last;
}

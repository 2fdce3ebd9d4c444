import { CellError } from "../../src/functions/cell-error";
import { workedOut } from "../../src/workbook/grid/evaluate/laid-over";
import { NamedCells, type CellValue } from "../../src/workbook/grid/read/named-cells";
import { block } from "../../src/workbook/grid/plan/addresses";
import { cellRange } from "../../src/workbook/grid/plan/cell-range";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";

/** A planned sheet as it is read once it has calculated: what its formulas answer stands in their cells. */
export function calculatedSheet(plan: SheetPlan): NamedCells {
  const world = workedOut(plan);
  const places = plan.cells.flatMap((cell) => {
    const { from, to } = block(cell.spillsTo ? `${cell.address}:${cell.spillsTo}` : cellRange(cell));
    return [from, to];
  });
  const grid = (): CellValue[][] =>
    Array.from({ length: Math.max(...places.map(({ row }) => row)) }, () =>
      Array<CellValue>(Math.max(...places.map(({ column }) => column))).fill(""),
    );
  const [values, formulas] = [grid(), grid()];
  for (const { address, content } of plan.cells) {
    const { row, column } = block(address).from;
    formulas[row - 1]![column - 1] = content;
  }
  for (const [row, line] of values.entries()) {
    for (const column of line.keys()) {
      const cell = world.at(row + 1, column + 1);
      line[column] = cell === null ? "" : cell instanceof CellError ? cell.code : cell;
      // Excel tells of a cell that an answer spills into what it shows.
      if (formulas[row]![column] === "") formulas[row]![column] = line[column];
    }
  }
  return new NamedCells(
    plan.sheetName,
    new Map(plan.names.map(({ name, range }) => [name.toLowerCase(), range])),
    { row: 1, column: 1 },
    values,
    formulas,
  );
}

import { position } from "../../src/workbook/grid/plan/addresses";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { NamedCells, type CellValue } from "../../src/workbook/grid/read/named-cells";

/** A planned sheet as Excel would hold what is typed on it: an apostrophe before words is not shown, and no formula has an answer yet. */
export function plannedSheet({ sheetName, cells, names }: SheetPlan): NamedCells {
  const places = cells.map(({ address }) => position(address));
  const grid = (): CellValue[][] =>
    Array.from({ length: Math.max(...places.map(({ row }) => row)) }, () =>
      Array<CellValue>(Math.max(...places.map(({ column }) => column))).fill(""),
    );
  const [values, formulas] = [grid(), grid()];
  for (const { address, content } of cells) {
    const { row, column } = position(address);
    const calculates = typeof content === "string" && content.startsWith("=");
    const shown = typeof content === "string" && content.startsWith("'") ? content.slice(1) : content;
    formulas[row - 1]![column - 1] = calculates ? content : shown;
    values[row - 1]![column - 1] = calculates ? "" : shown;
  }
  return new NamedCells(
    sheetName,
    new Map(names.map(({ name, range }) => [name.toLowerCase(), range])),
    { row: 1, column: 1 },
    values,
    formulas,
  );
}

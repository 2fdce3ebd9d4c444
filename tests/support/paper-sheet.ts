import { CellError } from "../../src/functions/cell-error";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { address as addressOf, block, position } from "../../src/workbook/grid/plan/addresses";
import { NamedCells, type CellValue } from "../../src/workbook/grid/read/named-cells";
import { paperGrid } from "./paper-grid";

/** What is typed over a planned sheet, by name: its first cell, or "readings.2.1" for two rows down and one column on. */
export type TypedOver = Readonly<Record<string, string | number>>;

/**
 * A batch sheet as Excel would hand it over, worked out in Node: what every cell shows, and its formula; a cell that another's answer
 * spills into tells its value for a formula, as Excel does.
 */
export function paperSheet(contents: BatchContents, typed: TypedOver = {}): NamedCells {
  const plan = planBatch(contents);
  const ranges = new Map(plan.names.map(({ name, range }) => [name.toLowerCase(), range]));
  const changed = new Map<string, string | number>();
  for (const [place, content] of Object.entries(typed)) {
    const [name = "", row = "0", column = "0"] = place.split(".");
    const range = ranges.get(name.toLowerCase());
    if (range === undefined) throw new Error(`the sheet has no name ${name}`);
    const { from } = block(range);
    changed.set(addressOf(from.row + Number(row), from.column + Number(column)), content);
  }
  const grid = paperGrid(plan, changed);
  const contentOf = new Map<string, CellValue>(plan.cells.map(({ address, content }) => [address, content]));
  for (const [address, content] of changed) contentOf.set(address, content);
  const covered = new Set(contentOf.keys());
  for (const { address, spillsTo } of plan.cells)
    if (spillsTo) {
      const { from, to } = block(`${address}:${spillsTo}`);
      for (let row = from.row; row <= to.row; row += 1)
        for (let column = from.column; column <= to.column; column += 1) covered.add(addressOf(row, column));
    }
  const values: CellValue[][] = [];
  const formulas: CellValue[][] = [];
  for (const address of covered) {
    const { row, column } = position(address);
    const cell = grid.at(address);
    const shown = cell instanceof CellError ? cell.code : (cell ?? "");
    const content = contentOf.get(address) ?? "";
    (values[row - 1] ??= [])[column - 1] = shown;
    (formulas[row - 1] ??= [])[column - 1] = typeof content === "string" && content.startsWith("=") ? content : shown;
  }
  const full = (cells: CellValue[][]) => Array.from(cells, (line) => Array.from(line ?? [], (cell) => cell ?? ""));
  return new NamedCells(contents.sheetName, ranges, { row: 1, column: 1 }, full(values), full(formulas));
}

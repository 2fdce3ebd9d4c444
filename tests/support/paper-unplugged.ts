import { planUnplug } from "../../src/workbook/exchange/unplug/plan-unplug";
import type { WorkingBlock } from "../../src/workbook/exchange/unplug/working-cells";
import { workedOut } from "../../src/workbook/grid/evaluate/laid-over";
import { CellError } from "../../src/functions/cell-error";
import { address, block } from "../../src/workbook/grid/plan/addresses";
import type { CellPlan, SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";

/** A planned sheet as its unplugged copy, by the same code, without a workbook; what it says of what stands still is in G1. */
export function paperUnplugged(plan: SheetPlan, name = "Plan"): SheetPlan {
  const sheet = workedOut(plan);
  const places = plan.cells.flatMap(({ address: cell, spillsTo }) => [
    block(cell).to,
    ...(spillsTo === undefined ? [] : [block(spillsTo).to]),
  ]);
  const [rows, columns] = [Math.max(...places.map(({ row }) => row)), Math.max(...places.map(({ column }) => column))];
  const contents = new Map(plan.cells.map(({ address: cell, content }) => [cell, content]));
  const matrix = <T>(read: (row: number, column: number) => T): T[][] =>
    Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => read(row + 1, column + 1)));
  const { changes, still } = planUnplug(
    {
      name,
      corner: { row: 1, column: 1 },
      formulas: matrix((row, column) => contents.get(address(row, column)) ?? ""),
      values: matrix((row, column) => {
        const value = sheet.at(row, column);
        return value instanceof CellError ? value.code : (value ?? "");
      }),
      names: new Map(plan.names.map(({ name: own, range }) => [own.toLowerCase(), `${name}!${range}`])),
      tables: [],
      spills: new Map(plan.cells.flatMap(({ address: cell, spillsTo }) => (spillsTo === undefined ? [] : [[cell, `${cell}:${spillsTo}`]]))),
    },
    false,
    "2026-12-01",
  );
  const written = new Map<string, string | number>();
  const write = (range: string, block_: readonly (readonly (string | number | boolean)[])[]): void => {
    const { from } = block(range);
    block_.forEach((line, row) =>
      line.forEach((content, column) =>
        written.set(
          address(from.row + row, from.column + column),
          typeof content === "boolean" ? `=${String(content).toUpperCase()}` : content,
        ),
      ),
    );
  };
  const blocks = new Set<WorkingBlock>(changes.flatMap(({ workings }) => workings));
  for (const { range, contents: cells } of [...blocks, ...(still ? [still.block] : [])]) write(range, cells);
  for (const { block: range, contents: cells } of changes) write(range, cells);
  if (still) written.set("G1", still.says);
  // What spilled stands cell by cell from now on.
  const kept = plan.cells.filter(({ address: cell }) => !written.has(cell));
  return {
    ...plan,
    cells: [...kept, ...[...written].map(([cell, content]): CellPlan => ({ address: cell, content, style: "result" }))],
  };
}

import { address } from "../../src/workbook/grid/plan/addresses";
import { NamedCells, type CellValue } from "../../src/workbook/grid/read/named-cells";

/**
 * A sheet that holds only these names, each with its cells as they show, below one another: for what reads a sheet and needs no engine.
 *
 * @param areas names for parts of those cells, such as one column of a block
 */
export function handSheet(
  named: Readonly<Record<string, CellValue | readonly (readonly CellValue[])[]>>,
  areas: Readonly<Record<string, string>> = {},
): NamedCells {
  const ranges = new Map<string, string>(Object.entries(areas));
  const cells: (readonly CellValue[])[] = [];
  for (const [name, content] of Object.entries(named)) {
    const rows = typeof content === "object" ? content : [[content]];
    ranges.set(name, `${address(cells.length + 1, 1)}:${address(cells.length + rows.length, rows[0]?.length ?? 1)}`);
    cells.push(...rows);
  }
  return new NamedCells("By hand", ranges, { row: 1, column: 1 }, cells, cells);
}

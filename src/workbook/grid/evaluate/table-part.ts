import { CellError } from "../../../functions/cell-error";
import { block } from "../plan/addresses";
import { single, type Cells } from "./cells";
import type { Reference } from "./references";
import type { TableCells } from "./world";

/** The cells of `Malt[Mass lb]`, `Malt[[#All],[Mass lb]:[Yield %]]`, `Malt[@Colour]` and the like. */
export function tablePart(table: TableCells, { columns, sections }: Extract<Reference, { kind: "table" }>, formulaRow: number): Cells {
  const headings = (table.cells[0] ?? []).map((cell) =>
    typeof cell === "string" ? cell.toLowerCase() : cell instanceof CellError ? cell.code : String(cell),
  );
  const wanted = columns.map((column) => headings.indexOf(column.toLowerCase()));
  if (wanted.includes(-1)) return single(new CellError("#REF!", `the table has no column ${columns[wanted.indexOf(-1)]}`));
  const [from, to] = wanted.length === 0 ? [0, headings.length - 1] : [Math.min(...wanted), Math.max(...wanted)];
  const body = table.cells.slice(1, table.hasTotals ? -1 : undefined);
  return rowsOf(table, sections, body, formulaRow).map((row) => row.slice(from, to + 1));
}

function rowsOf(table: TableCells, sections: readonly string[], body: Cells, formulaRow: number): Cells {
  if (sections.includes("this row")) {
    const row = table.cells[formulaRow - block(table.range).from.row];
    return row ? [row] : single(new CellError("#VALUE!", "the cell stands in no row of the table"));
  }
  if (sections.includes("all")) return table.cells;
  return [
    ...(sections.includes("headers") ? table.cells.slice(0, 1) : []),
    ...(sections.length === 0 || sections.includes("data") ? body : []),
    ...(sections.includes("totals") && table.hasTotals ? table.cells.slice(-1) : []),
  ];
}

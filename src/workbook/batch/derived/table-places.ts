import type { BatchCell } from "../fields/cells";
import { columnNumber } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Table } from "../describe/field";

/** The name by which a table is found, and the letters of its columns there: the first one tells where the lines are. */
export function mainArea({ areas }: Table): { readonly name: BatchCell; readonly from: string; readonly to: string } {
  const [[name, letters] = ["", ""]] = Object.entries(areas);
  const [from = "", to = ""] = letters.split(":");
  return { name: name as BatchCell, from, to };
}

/** The column of a sheet in which a column of a table stands, by a named part of it: tables move as a whole. */
export function columnAt({ areas }: Table, area: string, sheet: NamedCells, letters: string): number {
  const [first = ""] = (areas[area] ?? "").split(":");
  return sheet.area(area).from.column + columnNumber(letters) - columnNumber(first);
}

/** The columns of a table by their keys, counted from the first one of its main area. */
export function tableOffsets<T extends Table>(table: T): { readonly [Key in keyof T["columns"]]: number } {
  const first = columnNumber(mainArea(table).from);
  return Object.fromEntries(Object.entries(table.columns).map(([key, { column }]) => [key, columnNumber(column) - first])) as {
    readonly [Key in keyof T["columns"]]: number;
  };
}

/** What is to stand in a line of a table, counted from 0, cell by cell. */
export const lineCells = <T extends Table>(
  table: T,
  row: number,
  line: { readonly [Key in keyof T["columns"]]?: CellContent },
): {
  readonly key: keyof T["columns"] & string;
  readonly name: BatchCell;
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
}[] =>
  Object.entries(tableOffsets(table)).flatMap(([key, column]) => {
    const content = line[key];
    return content === undefined ? [] : [{ key, name: mainArea(table).name, row, column, content }];
  });

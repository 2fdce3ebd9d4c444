import { columnNumber } from "../../grid/plan/addresses";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Table } from "../describe/field";

/** The column of a sheet in which a column of a table stands, by a named part of it: tables move as a whole. */
export function columnAt({ areas }: Table, area: string, sheet: NamedCells, letters: string): number {
  const [first = ""] = (areas[area] ?? "").split(":");
  return sheet.area(area).from.column + columnNumber(letters) - columnNumber(first);
}

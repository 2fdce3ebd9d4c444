import { CellError } from "../../../functions/cell-error";
import type { Parameter } from "../../../functions/describe";
import { quantity, type QuantityName, type UnitSystem } from "../../../functions/quantities";
import { isoDay } from "../../grid/words/day-number";
import { isSingle, type Cell, type Cells } from "../../grid/evaluate/cells";

/** A cell in words; numbers to the digits that make sense for the quantity, and one more. */
export function showCell(cell: Cell, quantityName?: QuantityName): string {
  if (cell === null || cell === "") return "empty";
  if (cell instanceof CellError) return cell.code;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  return typeof cell === "number" ? showNumber(cell, quantityName) : cell;
}

export function showNumber(value: number, quantityName?: QuantityName): string {
  if (quantityName === "date") return value >= 1 ? isoDay(value) : String(value);
  if (quantityName === "gravity") return value.toFixed(4).replace(/0$/, "");
  if (quantityName === undefined || quantityName === "number") return String(Number(value.toPrecision(6)));
  return String(Number(value.toFixed(quantity(quantityName).digits + 1)));
}

export const unitOf = (parameter: Parameter, units: UnitSystem): string =>
  "quantity" in parameter ? quantity(parameter.quantity).unit[units] : "";

/** A block in a line: how many cells, how many filled, and the first few. */
export function showCells(cells: Cells, quantityName?: QuantityName): string {
  if (isSingle(cells)) return showCell(cells[0]?.[0] ?? null, quantityName);
  const all = cells.flat();
  const filled = all.filter((cell) => cell !== null && cell !== "");
  if (filled.length === 0) return `${all.length} cells, all empty`;
  const few = filled
    .slice(0, 6)
    .map((cell) => showCell(cell, quantityName))
    .join(", ");
  const count = filled.length === all.length ? `${all.length} cells` : `${filled.length} of ${all.length} cells filled`;
  return `${count}: ${few}${filled.length > 6 ? " …" : ""}`;
}

/** The rows of a table that hold anything, as texts, at most `most`. */
export function filledRows(cells: Cells, most: number): string[][] {
  return cells
    .filter((row) => row.some((cell) => cell !== null && cell !== ""))
    .slice(0, most)
    .map((row) => row.map((cell) => (cell === null || cell === "" ? "" : showCell(cell))));
}

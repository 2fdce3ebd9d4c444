import { address } from "../../grid/plan/addresses";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Fields, NumberField, Single, Table } from "../describe/field";
import { columnAt } from "./table-places";

/** A described number that stands on a sheet. */
export interface NumberCell {
  readonly field: NumberField;
  readonly address: string;
  readonly value: number;
}

/** Every number that is typed where one is described; cells that the sheet lacks are passed over. */
export const numberCells = (fields: Fields, sheet: NamedCells): NumberCell[] =>
  Object.values(fields).flatMap((field): NumberCell[] => {
    switch (field.kind) {
      case "group":
        return numberCells(field.fields, sheet);
      case "table":
        return Object.values(field.columns).flatMap((column) =>
          column.kind === "number" ? inColumn(column, placeOf(field, column, sheet), sheet) : [],
        );
      case "number":
        return inColumn(field, single(field, sheet), sheet);
      default:
        return [];
    }
  });

interface Place {
  readonly column: number;
  readonly first: number;
  readonly last: number;
}

function inColumn(field: NumberField, place: Place | undefined, sheet: NamedCells): NumberCell[] {
  if (place === undefined) return [];
  return Array.from({ length: place.last - place.first + 1 }, (_, index) => place.first + index).flatMap((row) => {
    const value = sheet.at(row, place.column);
    return typeof value === "number" ? [{ field, address: address(row, place.column), value }] : [];
  });
}

function single({ cell, within }: Single, sheet: NamedCells): Place | undefined {
  if (cell !== undefined) return named(cell, sheet);
  const area = within && named(within[0], sheet);
  if (!area) return undefined;
  const row = area.first + within[1];
  return row > area.last ? undefined : { column: area.column + within[2], first: row, last: row };
}

function named(name: string, sheet: NamedCells): Place | undefined {
  if (!sheet.has(name)) return undefined;
  const { from, to } = sheet.area(name);
  return { column: from.column, first: from.row, last: to.row };
}

/** A column with a name of its own is found by it, another one by its place in the first part of the table that has a name. */
function placeOf(table: Table, column: Table["columns"][string], sheet: NamedCells): Place | undefined {
  const own = column.cell === undefined ? undefined : named(column.cell, sheet);
  if (own) return own;
  const area = Object.keys(table.areas).find((name) => sheet.has(name));
  const there = area === undefined ? undefined : named(area, sheet);
  return area !== undefined && there ? { ...there, column: columnAt(table, area, sheet, column.column) } : undefined;
}

import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import type { Column, Fields, List, On, Single, Table, Value, Values, ValuesOf } from "../describe/field";
import { columnAt } from "./table-places";
import { usualValue } from "./usual-values";

/**
 * What stands in the described cells of a sheet. A cell that holds something else than it should (a word for a number) is read as
 * empty. What has no cell has its usual value: the caller knows better.
 *
 * @param emptied what an emptied cell that must not be blank counts as; left out: 0
 * @throws MissingName where a cell that every sheet has was deleted
 */
export function readFields<F extends Fields>(fields: F, sheet: NamedCells, on: On, emptied?: "usual"): ValuesOf<F> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([key, field]): [string, Value][] => {
      if (field.kind === "group") {
        const isThere = !field.optional || (field.area !== undefined && sheet.has(field.area));
        return isThere ? [[key, readFields(field.fields, sheet, on, field.emptied)]] : [];
      }
      if (field.kind === "table") return [[key, tableLines(field, sheet)]];
      if (field.kind === "list") return [[key, listValues(field, sheet)]];
      const empty = emptied === "usual" ? usualValue(field, on) : emptyValue(field);
      if (field.cell === undefined && field.within === undefined) return [[key, usualValue(field, on)]];
      // An older sheet lacks what a later plan brought.
      const lacks = field.cell !== undefined && !sheet.has(field.cell) && (emptied === "usual" || (field.since ?? 1) > 1);
      return [[key, lacks ? empty : fromCell(field, cellOf(field, sheet), empty)]];
    }),
  ) as unknown as ValuesOf<F>;
}

const emptyValue = (field: Single): number | "" => ((field.kind === "number" || field.kind === "moment") && !field.blank ? 0 : "");

function cellOf({ cell, within }: Single, sheet: NamedCells): CellValue {
  if (cell !== undefined) return sheet.value(cell);
  const [name, row, column] = within ?? ["", 0, 0];
  const { from, to } = sheet.area(name);
  return from.row + row > to.row ? "" : sheet.at(from.row + row, from.column + column);
}

/** What a cell says of a field; `empty` where it says nothing that the field can hold. */
export function fromCell(field: Single, cell: CellValue, empty: Value): Value {
  const words = String(cell).trim();
  switch (field.kind) {
    case "number":
      return typeof cell === "number" ? cell : (field.words?.find((word) => word === words.toLowerCase()) ?? empty);
    case "moment":
      return typeof cell === "number" ? cell : empty;
    case "choice":
      return field.choices.find((choice) => choice === words) ?? field.otherwise ?? field.usual ?? field.choices[0];
    case "formula":
      return field.numbers === undefined ? String(cell) : typeof cell === "boolean" ? "" : cell;
    default:
      return words;
  }
}

/** As they were typed: words that are a formula keep it. */
function tableLines(table: Table, sheet: NamedCells): Values[] {
  const [area = ""] = Object.keys(table.areas);
  const { from, to } = sheet.area(area);
  const columns = Object.entries(table.columns).map(([key, column]) => ({ key, column, at: columnAt(table, area, sheet, column.column) }));
  const lines: Values[] = [];
  for (let row = from.row; row <= to.row; row += 1) {
    const cells = columns.map(({ key, column, at }) => ({
      key,
      column,
      cell: column.kind === "formula" ? sheet.formulaAt(row, at) : sheet.at(row, at),
    }));
    if (counts(cells))
      lines.push(
        Object.fromEntries(
          cells.flatMap(({ key, column, cell }) =>
            cell === "" && column.kind === "text" && column.optional ? [] : [[key, fromCell(column, cell, emptyValue(column))]],
          ),
        ),
      );
  }
  return lines;
}

function counts(cells: readonly { readonly column: Column; readonly cell: CellValue }[]): boolean {
  const needed = cells.filter(({ column }) => column.needed);
  return needed.length > 0
    ? needed.every(({ cell }) => typeof cell === "number")
    : cells.some(({ column, cell }) => !column.beside && cell !== "");
}

/** Up to the last one that is filled in; a line that was left out stays blank. */
function listValues({ cell, each }: List, sheet: NamedCells): Value[] {
  const values = sheet.block(cell).map(([first = ""]) => fromCell(each, first, ""));
  return values.slice(0, values.findLastIndex((value) => value !== "") + 1);
}

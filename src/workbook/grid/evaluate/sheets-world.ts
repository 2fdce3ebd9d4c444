import { block } from "../plan/addresses";
import type { NamedCells } from "../read/named-cells";
import { cellOf, type Cells } from "./cells";
import type { World } from "./world";

/** A workbook that was read whole. Tables and spill ranges are not known in it. */
export function worldOfSheets(
  sheets: ReadonlyMap<string, NamedCells>,
  workbookNames: ReadonlyMap<string, string>,
  sheet: string,
  row = 1,
): World {
  return {
    sheet,
    row,
    cells: (name, range) => {
      const found = sheets.get(name.toLowerCase());
      return found && !range.endsWith("#") ? cellsOf(found, range) : undefined;
    },
    name: (sheetName, name) => {
      const found = sheets.get(sheetName.toLowerCase());
      return found?.has(name) ? `='${sheetName.replaceAll("'", "''")}'!${found.range(name)}` : workbookNames.get(name.toLowerCase());
    },
    table: () => undefined,
  };
}

function cellsOf(sheet: NamedCells, range: string): Cells {
  const { from, to } = block(range);
  return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
    Array.from({ length: to.column - from.column + 1 }, (_2, column) =>
      cellOf(sheet.at(from.row + row, from.column + column), sheet.formulaAt(from.row + row, from.column + column) === ""),
    ),
  );
}

/** Sheets by their names in small letters. */
export const sheetsByName = (sheets: readonly NamedCells[]): Map<string, NamedCells> =>
  new Map(sheets.map((sheet) => [sheet.sheetName.toLowerCase(), sheet]));

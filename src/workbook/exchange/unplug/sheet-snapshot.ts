import { parseStructRef } from "@borgar/fx";
import { address, block, columnLetters, localAddress } from "../../grid/plan/addresses";
import { corners, type Shape, type Surroundings } from "./references";

export interface TablePlace {
  readonly name: string;
  /** Its cells without the heading: "B20:E25". */
  readonly body: string;
  readonly columns: readonly string[];
}

/** A sheet as it was read, with all that its formulas may speak of. Rows and columns of the cells begin at `corner`. */
export interface SheetSnapshot {
  readonly name: string;
  readonly corner: { readonly row: number; readonly column: number };
  readonly formulas: readonly (readonly unknown[])[];
  readonly values: readonly (readonly unknown[])[];
  /** Lower-case names that stand for cells, with what they stand for: "'Batch 1'!$B$5". The sheet's own come before the workbook's. */
  readonly names: ReadonlyMap<string, string>;
  readonly tables: readonly TablePlace[];
  /** Blocks that formulas fill, by their first cell: "F54" → "F54:F65". */
  readonly spills: ReadonlyMap<string, string>;
}

export const sizeOf = (range: string): Shape => {
  const { from, to } = block(range);
  return { rows: to.row - from.row + 1, columns: to.column - from.column + 1 };
};

export function cellAt(cells: readonly (readonly unknown[])[], corner: SheetSnapshot["corner"], row: number, column: number): unknown {
  return cells[row - corner.row]?.[column - corner.column] ?? "";
}

/** What the plain formulas may know of the sheet. */
export function surroundings(sheet: SheetSnapshot, spills: ReadonlyMap<string, string>): Surroundings {
  const rangeOf = (reference: string): string | undefined => {
    if (reference.endsWith("#")) return spills.get(localAddress(reference.slice(0, -1)).toUpperCase());
    if (corners(reference)) return reference;
    return sheet.names.get(localName(reference)) ?? tableRange(sheet.tables, reference);
  };
  const shapeOf = (reference: string): Shape | undefined => {
    const found = corners(rangeOf(reference) ?? "");
    return found && { rows: found.to.row - found.from.row + 1, columns: found.to.column - found.from.column + 1 };
  };
  return {
    shapeOf,
    spillRange: (reference) => (reference.endsWith("#") ? rangeOf(reference) : undefined),
    valuesOf: (reference) => {
      const found = corners(rangeOf(reference) ?? "");
      if (!found || !isOwn(found.prefix, sheet.name)) return undefined;
      return Array.from({ length: found.to.row - found.from.row + 1 }, (_, row) =>
        Array.from({ length: found.to.column - found.from.column + 1 }, (__, column) =>
          cellAt(sheet.values, sheet.corner, found.from.row + row, found.from.column + column),
        ),
      );
    },
  };
}

/** "B20:E25" for a reference that speaks of cells of this very sheet; undefined for any other. */
export function rangeOn(sheet: SheetSnapshot, reference: string): string | undefined {
  const spilled = reference.endsWith("#") ? sheet.spills.get(localAddress(reference.slice(0, -1)).toUpperCase()) : undefined;
  const range =
    spilled ?? (corners(reference) ? reference : (sheet.names.get(localName(reference)) ?? tableRange(sheet.tables, reference)));
  const found = corners(range ?? "");
  return range !== undefined && found && isOwn(found.prefix, sheet.name) ? localAddress(range).toUpperCase() : undefined;
}

const localName = (reference: string): string => reference.slice(reference.lastIndexOf("!") + 1).toLowerCase();
const isOwn = (prefix: string, sheetName: string): boolean =>
  prefix === "" || prefix.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'").toLowerCase() === sheetName.toLowerCase();

/** "Malt[Mass]" and "Malt[[Mass]:[Colour]]" as an address; other ways to name parts of a table are not looked into. */
function tableRange(tables: readonly TablePlace[], reference: string): string | undefined {
  const { table: tableName = "", sections = [], columns = [] } = parseStructRef(reference) ?? {};
  const table = tables.find(({ name }) => name.toLowerCase() === tableName.toLowerCase());
  if (!table || sections.some((section) => section.toLowerCase() !== "data")) return undefined;
  const { from, to } = block(table.body);
  const places = columns.map((column) => table.columns.findIndex((name) => name.toLowerCase() === column.toLowerCase()));
  if (places.includes(-1)) return undefined;
  const [first = 0, last = places.length === 0 ? table.columns.length - 1 : first] = places;
  return `${address(from.row, from.column + first)}:${columnLetters(from.column + last)}${to.row}`;
}

import { address, block, localAddress, position, type Position } from "../../grid/plan/addresses";
import { loadOwnNames, ownNames } from "../../grid/read/own-names";
import { putMark, writingMark } from "../../grid/write/writing-mark";
import { concerns } from "./plan-unplug";
import type { SheetSnapshot, TablePlace } from "./sheet-snapshot";
import type { UnplugChoices } from "./unplugged-sheet";

/** A sheet and its copy. */
export interface Pair {
  readonly sheetName: string;
  readonly copyName: string;
}

export interface Original {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly notes: Excel.NoteCollection | undefined;
}

export function lookAt(sheet: Excel.Worksheet, knowsNotes: boolean): Original {
  const used = sheet.getUsedRange();
  used.load("address,formulas,values");
  loadOwnNames(sheet);
  sheet.tables.load("items/name");
  sheet.protection.load("protected");
  const notes = knowsNotes ? sheet.notes : undefined;
  notes?.load("items/content");
  return { sheet, used, notes };
}

export interface Copy {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly spills: readonly { readonly cell: string; readonly range: Excel.Range }[];
  readonly notePlaces: readonly { readonly range: Excel.Range; readonly content: string }[];
  readonly tables: readonly { readonly body: Excel.Range; readonly columns: Excel.TableColumnCollection }[];
}

export function copyAndLook(
  { sheet: original, used, notes }: Original,
  { sheetName, copyName }: Pair,
  names: SheetSnapshot["names"],
  { standalone }: UnplugChoices,
  mark: string,
): Copy {
  const sheet = original.copy("End");
  if (original.protection.protected) sheet.protection.unprotect();
  // A sheet that stands only for a moment has a mark, which its copy takes over.
  if (original.names.items.every(({ name }) => name !== writingMark)) putMark(sheet, mark);
  sheet.name = copyName;
  const copied = sheet.getUsedRange();
  copied.load("address,formulas");
  sheet.tables.load("items/name");
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  const spills = used.formulas.flatMap((row: unknown[], rowIndex) =>
    row.flatMap((formula, columnIndex) => {
      if (!concerns(formula, standalone, sheetName, names)) return [];
      const range = original.getCell(corner.row - 1 + rowIndex, corner.column - 1 + columnIndex).getSpillingToRangeOrNullObject();
      range.load("address");
      return [{ cell: address(corner.row + rowIndex, corner.column + columnIndex), range }];
    }),
  );
  const notePlaces = (notes?.items ?? []).map((note) => {
    const range = note.getLocation();
    range.load("address");
    return { range, content: note.content };
  });
  const tables = original.tables.items.map((table) => {
    const body = table.getDataBodyRange();
    body.load("address");
    table.columns.load("items/name");
    return { body, columns: table.columns };
  });
  return { sheet, used: copied, spills, notePlaces, tables };
}

export type Named = readonly (readonly [string, string])[];

/** The names that the sheet's formulas can use, in lower case: the workbook's, and before them its own. */
export function namesSeen({ sheet }: Original, ofWorkbook: Named): Map<string, string> {
  const own = ownNames(sheet).map(({ name, formula }) => [name, String(formula)] as const);
  return new Map([...ofWorkbook, ...own].map(([name, formula]) => [name.toLowerCase(), formula.replace(/^=/, "")]));
}

export function snapshotOf({ sheetName }: Pair, original: Original, copy: Copy, ofWorkbook: Named): SheetSnapshot {
  const { used } = original;
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  const spills = new Map(
    copy.spills.filter(({ range }) => !range.isNullObject).map(({ cell, range }) => [cell, localAddress(range.address)]),
  );
  // The copy's tables have names of their own, in the same order.
  const tables = copy.tables.flatMap(({ body, columns }, index): TablePlace[] => {
    const name = copy.sheet.tables.items[index]?.name;
    return name === undefined ? [] : [{ name, body: localAddress(body.address), columns: columns.items.map((column) => column.name) }];
  });
  return {
    name: sheetName,
    corner,
    formulas: withoutSpilled(copyFormulas(used, copy.used), used.values as unknown[][], corner, spills),
    values: used.values as unknown[][],
    names: namesSeen(original, ofWorkbook),
    tables,
    spills,
  };
}

/** A cell that another one's formula spills into may answer with that formula: what it holds is a value. */
function withoutSpilled(formulas: unknown[][], values: unknown[][], corner: Position, spills: ReadonlyMap<string, string>): unknown[][] {
  const filled = [...spills].map(([cell, range]) => ({ first: position(cell), ...block(range) }));
  const isSpilled = (row: number, column: number): boolean =>
    filled.some(
      ({ first, from, to }) =>
        row >= from.row && row <= to.row && column >= from.column && column <= to.column && !(row === first.row && column === first.column),
    );
  return formulas.map((line, row) =>
    line.map((formula, column) => (isSpilled(corner.row + row, corner.column + column) ? values[row]?.[column] : formula)),
  );
}

/** The copy's own spelling of each formula, where both have the same cells in use; constants and spilled cells as in the original. */
function copyFormulas(original: Excel.Range, copied: Excel.Range): unknown[][] {
  const same = localAddress(original.address) === localAddress(copied.address);
  return (original.formulas as unknown[][]).map((row, rowIndex) =>
    row.map((formula, columnIndex) =>
      same && typeof formula === "string" && formula.startsWith("=") ? (copied.formulas[rowIndex]?.[columnIndex] as unknown) : formula,
    ),
  );
}

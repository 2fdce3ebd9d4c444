import { block, type Position } from "../plan/addresses";
import { loadOwnNames, ownNames } from "../read/own-names";
import { cellOf, type Cells } from "./cells";
import { neededCells, rangeKey } from "./needed-cells";
import type { TableCells, World } from "./world";

/** More than this is not read just to be explained. */
const mostCells = 20_000;

/** Names and sheets, asked for before the sync that the caller makes anyway. */
export interface AskedNames {
  readonly sheet: Excel.Worksheet;
  readonly workbookNames: Excel.NamedItemCollection;
  readonly sheets: Excel.WorksheetCollection;
}

export function askForNames(context: Excel.RequestContext, sheet: Excel.Worksheet): AskedNames {
  const asked = { sheet, workbookNames: context.workbook.names, sheets: context.workbook.worksheets };
  loadOwnNames(sheet);
  asked.workbookNames.load("items/name,items/formula");
  asked.sheets.load("items/name");
  return asked;
}

/**
 * Reads what formulas on a sheet look at, in one round trip (two where tables come in). Cells only; nothing is written.
 *
 * @param asked from `askForNames`, loaded
 */
export async function readWorld(
  context: Excel.RequestContext,
  asked: AskedNames,
  sheet: string,
  at: Position,
  formulas: readonly string[],
): Promise<World> {
  const own = namesOf(ownNames(asked.sheet));
  const shared = namesOf(asked.workbookNames.items);
  // Names of other sheets are not asked for: a formula seldom looks there, and a season has hundreds of sheets.
  const name: World["name"] = (sheetName, wanted) =>
    (sheetName.toLowerCase() === sheet.toLowerCase() ? own.get(wanted.toLowerCase()) : undefined) ?? shared.get(wanted.toLowerCase());
  const needed = neededCells(formulas, { sheet, name });
  const known = new Set(asked.sheets.items.map((item) => item.name.toLowerCase()));
  const loaded = [...needed.ranges.values()]
    .filter(({ sheet: sheetName, range }) => known.has(sheetName.toLowerCase()) && sizeOf(range) <= mostCells)
    .map((where) => ({ ...where, cells: load(context, where) }));
  const tables = await readTables(context, sheet, at, needed.tables);
  if (loaded.length > 0 && needed.tables.size === 0) await context.sync();
  const cells = new Map(
    loaded.map(({ sheet: sheetName, range, cells: found }) => [
      rangeKey(sheetName, range),
      found.isNullObject ? undefined : readCells(found),
    ]),
  );
  return {
    sheet,
    row: at.row,
    name,
    cells: (sheetName, range) => cells.get(rangeKey(sheetName, range)),
    table: (wanted) => tables.get(wanted.toLowerCase()),
  };
}

const namesOf = (items: readonly Excel.NamedItem[]): Map<string, string> =>
  new Map(items.map(({ name, formula }) => [name.toLowerCase(), String(formula)]));

function sizeOf(range: string): number {
  const [, fromRow = "1", toRow = fromRow] = /\D(\d+)(?::\D+(\d+))?/.exec(range) ?? [];
  return Number(toRow) - Number(fromRow) + 1;
}

function load(context: Excel.RequestContext, { sheet, range }: { readonly sheet: string; readonly range: string }): Excel.Range {
  const cells = context.workbook.worksheets.getItem(sheet).getRange(range.replace("#", ""));
  const found = range.endsWith("#") ? cells.getSpillingToRangeOrNullObject() : cells;
  found.load("values,valueTypes");
  return found;
}

const readCells = (range: Excel.Range): Cells =>
  range.values.map((line: unknown[], row) =>
    line.map((value, column) => cellOf(value, range.valueTypes[row]?.[column] === Excel.RangeValueType.empty)),
  );

/** The tables by name; the one of the cell itself, which a formula may leave unnamed, is found by asking its sheet. */
async function readTables(
  context: Excel.RequestContext,
  sheet: string,
  at: Position,
  wanted: ReadonlySet<string>,
): Promise<Map<string, TableCells>> {
  if (wanted.size === 0) return new Map();
  const tables = context.workbook.worksheets.getItem(sheet).tables;
  const all = context.workbook.tables;
  tables.load("items/name");
  all.load("items/name");
  await context.sync();
  const asked = [...wanted].flatMap((name) =>
    (name === "" ? tables.items : all.items.filter((table) => table.name.toLowerCase() === name.toLowerCase())).map((table) => {
      const range = table.getRange();
      range.load("address,values,valueTypes");
      table.load("showTotals");
      return { name: name.toLowerCase(), table, range };
    }),
  );
  await context.sync();
  const found = new Map<string, TableCells>();
  for (const { name, table, range } of asked) {
    const mark = range.address.lastIndexOf("!");
    const cells = {
      sheet: range.address.slice(0, mark),
      range: range.address.slice(mark + 1),
      cells: readCells(range),
      hasTotals: table.showTotals,
    };
    if (name !== "" || holds(cells.range, at)) found.set(name, cells);
  }
  return found;
}

function holds(range: string, { row, column }: Position): boolean {
  const { from, to } = block(range);
  return row >= from.row && row <= to.row && column >= from.column && column <= to.column;
}

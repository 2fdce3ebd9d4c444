import { localAddress, position } from "../plan/addresses";
import { NamedCells } from "./named-cells";
import { loadOwnNames, ownNames } from "./own-names";

/** What must be loaded before a sheet can be turned into `NamedCells`. */
interface LoadedSheet {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
}

/** Asks for a sheet's names and cells; after the next `context.sync()`, `namedCells` can read them. */
export function loadSheet(sheet: Excel.Worksheet): LoadedSheet {
  sheet.load("name");
  loadOwnNames(sheet);
  const used = sheet.getUsedRangeOrNullObject();
  used.load("address,values,formulas");
  return { sheet, used };
}

export function namedCells({ sheet, used }: LoadedSheet): NamedCells {
  const ranges = new Map<string, string>();
  for (const { name, formula } of ownNames(sheet)) {
    const range = rangeOf(String(formula));
    if (range) ranges.set(name.toLowerCase(), range);
  }
  if (used.isNullObject) return new NamedCells(sheet.name, ranges, { row: 1, column: 1 }, [], []);
  const corner = position(localAddress(used.address).split(":")[0] ?? "A1");
  return new NamedCells(
    sheet.name,
    ranges,
    corner,
    used.values as (string | number | boolean)[][],
    used.formulas as (string | number | boolean)[][],
  );
}

/** "='Batch 1'!$B$7:$C$9" → "B7:C9"; undefined for a name that stands for something else, or whose cells are gone. */
export function rangeOf(formula: string): string | undefined {
  const local = localAddress(formula.replace(/^=/, ""));
  return /^[A-Z]{1,3}\d+(:[A-Z]{1,3}\d+)?$/i.test(local) ? local : undefined;
}

/** Every sheet of the workbook, in the order of the tabs, read at one moment: two `context.sync()` for any number of sheets. */
export async function readAllSheets(context: Excel.RequestContext): Promise<NamedCells[]> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  await context.sync();
  const loaded = sheets.items.map(loadSheet);
  await context.sync();
  return loaded.map(namedCells);
}

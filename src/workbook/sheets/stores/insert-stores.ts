import { freeName, insertSheet, InsertionRefused } from "../../grid/write/insert-sheet";
import { readAllSheets } from "../../grid/read/read-sheets";
import { sheetMarks } from "../../batch/read/batch-marks";
import { planStores, type StockLine, type StoresOptions } from "./stores-plan";
import { readStores, storesSheetOf, type StockItem } from "./stock";
import { stockKinds } from "./stock-kinds";
import { storesMark, storesVersion } from "./stores-columns";

/**
 * Puts the stores sheet into the workbook, all of it or nothing.
 *
 * @throws InsertionRefused when there is one already, or its name is taken
 */
export async function insertStores(context: Excel.RequestContext, options: StoresOptions): Promise<void> {
  const there = (await sheetMarks(context, [storesMark])).find(({ ranges }) => ranges.has(storesMark));
  if (there) throw new InsertionRefused(`This workbook has a stores sheet already: "${there.name}".`);
  await insertSheet(context, planStores(options), "A5");
}

/**
 * Writes what stands on an older stores sheet, shelves and book, on a sheet of today's plan. The older one stays as it is, and is
 * not drawn on any more.
 *
 * @returns the name of the new sheet
 */
export async function renewStores(context: Excel.RequestContext, today: StoresOptions["today"]): Promise<string> {
  const sheets = await readAllSheets(context);
  const older = storesSheetOf(sheets);
  if (!older) throw new InsertionRefused("This workbook has no stores sheet any more.");
  const { items, draws, units, version } = readStores(older);
  if (version >= storesVersion) throw new InsertionRefused(`“${older.sheetName}” has today's plan already.`);
  const sheetName = freeName(
    sheets.map((sheet) => sheet.sheetName),
    older.sheetName,
  );
  const stock = Object.fromEntries(stockKinds.map(({ kind }) => [kind, items.filter((item) => item.kind === kind).map(lineOf)]));
  await insertSheet(context, planStores({ sheetName, units, today, stock, draws }), "A5");
  return sheetName;
}

function lineOf({ name, lot, dated, bought, price, remark, hop }: StockItem): StockLine {
  const plain = (value: string | number | boolean): string | number => (typeof value === "boolean" ? String(value) : value);
  return {
    name,
    lot: /^\d+$/.test(lot) ? Number(lot) : lot,
    dated: dated ?? "",
    bought,
    price: plain(price),
    remark,
    ...(hop && {
      hop: {
        alphaPercent: plain(hop.alphaPercent),
        openedOn: plain(hop.openedOn),
        storedAt: plain(hop.storedAt),
        package: plain(hop.package),
      },
    }),
  };
}

import type { UnitSystem } from "../../functions/quantities";
import { planVersion } from "../batch/card";
import type { NamedCells } from "./named-cells";
import { loadSheet, namedCells, readAllSheets } from "./read-sheets";

/** The name that marks a batch sheet and holds the version of its plan. */
export const batchMark = "gylebook";

export const isBatchSheet = (sheet: NamedCells): boolean => sheet.has(batchMark) && sheet.has("batch_name");

/** Made by a newer Gylebook than this one: it is shown as it is and not written to. */
export const isNewer = (sheet: NamedCells): boolean => Number(sheet.value(batchMark)) > planVersion;

/** The mark of a batch; "" on a sheet from before there was one. */
export const batchIdOf = (sheet: NamedCells): string => (sheet.has("batch_id") ? sheet.text("batch_id") : "");

/** What the numbers on a batch sheet are in. */
export const unitsOf = (sheet: NamedCells): UnitSystem => (sheet.text("units") === "us" ? "us" : "metric");

/** All batch sheets in the order of the tabs. */
export async function readBatchSheets(context: Excel.RequestContext): Promise<NamedCells[]> {
  return (await readAllSheets(context)).filter(isBatchSheet);
}

/** One sheet by its name, or the one in front; undefined where it is no batch sheet or is gone. */
export async function readBatchSheet(context: Excel.RequestContext, sheetName?: string): Promise<NamedCells | undefined> {
  const sheets = context.workbook.worksheets;
  if (sheetName === undefined) {
    const loaded = loadSheet(sheets.getActiveWorksheet());
    await context.sync();
    return only(namedCells(loaded));
  }
  const sheet = sheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const loaded = loadSheet(sheet);
  await context.sync();
  return only(namedCells(loaded));
}

const only = (sheet: NamedCells): NamedCells | undefined => (isBatchSheet(sheet) ? sheet : undefined);

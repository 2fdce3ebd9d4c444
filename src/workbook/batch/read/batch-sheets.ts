import type { UnitSystem } from "../../../functions/quantities";
import type { BatchCell } from "../fields/cells";
import { unitWords } from "../unit-words";
import { planVersion } from "../describe/plan-version";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { loadSheet, namedCells, readAllSheets } from "../../grid/read/read-sheets";

/** A batch sheet as it stood at one moment. */
export type BatchSheet = NamedCells<BatchCell>;

/** The name that marks a batch sheet and holds the version of its plan. */
export const batchMark = "gylebook";

/** The mark of an unplugged batch sheet, in place of the batch sheet's own: nothing must count a batch twice. */
export const unpluggedMark = "gylebook_unplugged";

export const isBatchSheet = (sheet: NamedCells): boolean => sheet.has(batchMark) && sheet.has("batch_name");

/** A batch sheet whose GYLE formulas are plain ones or values: it can be read, but nothing of ours writes to it or counts it. */
export const isUnplugged = (sheet: NamedCells): boolean => sheet.has(unpluggedMark) && sheet.has("batch_name");

/** A batch sheet as what only reads it takes it: plugged in or unplugged. */
export const isAnyBatch = (sheet: NamedCells): boolean => isBatchSheet(sheet) || isUnplugged(sheet);

/** What stands in the marked cell of either: the version of its plan, if nobody has typed over it. */
export const planMark = (sheet: NamedCells): CellValue => sheet.value(isUnplugged(sheet) ? unpluggedMark : batchMark);

/** Made by a newer Gylebook than this one: it is shown as it is and not written to. */
export const isNewer = (sheet: NamedCells): boolean => Number(planMark(sheet)) > planVersion;

/** The mark of a batch; "" on a sheet from before there was one. */
export const batchIdOf = (sheet: BatchSheet): string => sheet.knownText("batch_id");

/** What the words beside its figures say, which were written with the sheet: they tell which units it was made in. */
export function unitsBeside(sheet: BatchSheet): UnitSystem | undefined {
  if (!sheet.has("volume")) return undefined;
  const { row, column } = sheet.area("volume").from;
  const beside = String(sheet.at(row, column + 1)).trim();
  return (["metric", "us"] as const).find((units) => unitWords(units).volume === beside);
}

/** What the numbers on a batch sheet are in. */
export const unitsOf = (sheet: BatchSheet): UnitSystem => (sheet.text("units") === "us" ? "us" : "metric");

/** All batch sheets in the order of the tabs. */
export async function readBatchSheets(context: Excel.RequestContext): Promise<BatchSheet[]> {
  return (await readAllSheets(context)).filter(isBatchSheet);
}

/** One batch sheet by its name, or the one in front; undefined where it is no batch sheet, is unplugged or is gone. */
export async function readBatchSheet(context: Excel.RequestContext, sheetName?: string): Promise<BatchSheet | undefined> {
  const sheet = await readSheet(context, sheetName);
  return sheet && isBatchSheet(sheet) ? sheet : undefined;
}

/** The batch sheet in front, unplugged or not, for what only reads it. */
export async function batchToRead(context: Excel.RequestContext): Promise<BatchSheet | undefined> {
  const sheet = await readSheet(context);
  return sheet && isAnyBatch(sheet) ? sheet : undefined;
}

/** Any sheet by its name, or the one in front; undefined where it is gone. */
export async function readSheet(context: Excel.RequestContext, sheetName?: string): Promise<NamedCells | undefined> {
  const sheets = context.workbook.worksheets;
  if (sheetName === undefined) {
    const loaded = loadSheet(sheets.getActiveWorksheet());
    await context.sync();
    return namedCells(loaded);
  }
  const sheet = sheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const loaded = loadSheet(sheet);
  await context.sync();
  return namedCells(loaded);
}

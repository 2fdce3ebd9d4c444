import { isKitSheet, kitsOnSheet, type KitOnSheet } from "./kit/kits-on-sheet";
import type { BatchContents } from "../batch/contents";
import { batchContents } from "../batch/read/batch-contents";
import { isAnyBatch, isNewer, isUnplugged, type BatchSheet } from "../batch/read/batch-sheets";
import { readAllSheets } from "../grid/read/read-sheets";
import { reasonOf } from "../grid/words/host-words";

/** A batch of this workbook, as it stood when it was read. */
export interface BatchInWorkbook {
  readonly sheetName: string;
  readonly contents: BatchContents;
  /** Of an unplugged sheet with the GYLE formulas that its notes keep. */
  readonly cells: BatchSheet;
}

export interface WorkbookAtOneMoment {
  /** Every sheet, whatever it is, in the order of the tabs. */
  readonly sheetNames: readonly string[];
  readonly batches: readonly BatchInWorkbook[];
  /** Batch sheets that cannot be read, with the reason. */
  readonly unreadable: readonly string[];
  /** Of the kit sheet, if there is one. */
  readonly kits: readonly KitOnSheet[];
  /** The sheet in front. */
  readonly activeSheet: string;
}

/**
 * All batches of the workbook, unplugged ones too, for what only reads a batch; a sheet whose named cells were deleted is
 * named and passed over, not guessed at.
 */
export async function batchesInWorkbook(context: Excel.RequestContext): Promise<WorkbookAtOneMoment> {
  const active = context.workbook.worksheets.getActiveWorksheet();
  active.load("name");
  await context.sync();
  const sheets = await withKeptFormulas(context, await readAllSheets(context));
  const unreadable: string[] = [];
  const batches = sheets.filter(isAnyBatch).flatMap((cells): BatchInWorkbook[] => {
    try {
      if (isNewer(cells)) throw new Error(`“${cells.sheetName}” was made by a newer Gylebook: update this one to read it.`);
      return [{ sheetName: cells.sheetName, contents: batchContents(cells), cells }];
    } catch (problem) {
      unreadable.push(reasonOf(problem));
      return [];
    }
  });
  return {
    sheetNames: sheets.map(({ sheetName }) => sheetName),
    batches,
    kits: sheets.filter(isKitSheet).flatMap(kitsOnSheet),
    unreadable,
    activeSheet: active.name,
  };
}

/** Notes are only looked into where a sheet is unplugged; few workbooks have one. */
async function withKeptFormulas(context: Excel.RequestContext, sheets: readonly BatchSheet[]): Promise<readonly BatchSheet[]> {
  const unplugged = sheets.filter(isUnplugged);
  if (unplugged.length === 0) return sheets;
  const { asPlugged } = await import(/* webpackChunkName: "pane-kept-formulas" */ "../exchange/unplug/as-plugged");
  const read = new Map((await asPlugged(context, unplugged)).map((cells) => [cells.sheetName, cells]));
  return sheets.map((cells) => read.get(cells.sheetName) ?? cells);
}

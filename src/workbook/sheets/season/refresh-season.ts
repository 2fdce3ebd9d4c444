import { address, columnNumber } from "../../grid/plan/addresses";
import { batchMark, unpluggedMark } from "../../batch/read/batch-sheets";
import { loadBatchMarks, sheetMarks } from "../../batch/read/batch-marks";
import { copies } from "../../batch/read/copied-sheets";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { unpluggedBatches, type UnpluggedBatch } from "../../batch/read/unplugged-batches";
import { writeFormats } from "../../grid/write/write-formats";
import { moved } from "./own-cells";
import { rowCells, rowContents } from "./season-cells";
import { columns, firstOwnColumn, lastColumn, printedTo } from "./season-columns";
import { mostBatches, seasonMark } from "./season-plan";
import { mergeRows, type Merged, type PresentRow, type SeasonRow } from "./season-rows";
import { inTheWay, presentList } from "./season-sheet";

/** The season sheet cannot be brought up to date, in words for the brewer; it is as it was. */
export class RefreshRefused extends Error {
  override readonly name = "RefreshRefused";
}

export interface SeasonReport extends Omit<Merged, "rows"> {
  readonly sheetName: string;
  readonly batches: number;
  /** Rows that were written; 0 when everything was as it should be. */
  readonly written: number;
  /** Groups of sheets that are copies of one another and still carry one and the same mark. */
  readonly copies: readonly (readonly string[])[];
  /** Sheets that have no row in the list. */
  readonly unplugged: readonly UnpluggedBatch[];
}

/**
 * Brings the list of the season sheet up to the batch sheets as they are now; undefined where the workbook has no season
 * sheet. Writes only rows that changed, so a second time it writes nothing. Three `context.sync()` to look, one more to write when there is
 * something to write, whatever the number of batches.
 *
 * @throws RefreshRefused when something of the brewer's stands where a new row must go
 */
export async function refreshSeason(context: Excel.RequestContext): Promise<SeasonReport | undefined> {
  const marks = await sheetMarks(context, [batchMark, unpluggedMark, "batch_id", seasonMark]);
  const season = marks.find(({ ranges }) => ranges.has(seasonMark));
  if (!season) return undefined;
  const loaded = loadSheet(season.sheet);
  const [batchMarks, unpluggedMarks] = [loadBatchMarks(marks), loadBatchMarks(marks, unpluggedMark)];
  await context.sync();

  const cells = namedCells(loaded);
  const { firstRow, rows: present, ownWidth } = presentList(cells);
  const sheets = batchMarks();
  const { rows, ...changes } = mergeRows(present, sheets);
  if (rows.length > mostBatches)
    throw new RefreshRefused(
      `The season sheet has room for ${mostBatches} batches; this workbook has ${rows.length}. Begin a new workbook for the next season; nothing was changed.`,
    );
  const obstacle = inTheWay(cells, firstRow + present.length, firstRow + rows.length - 1, ownWidth);
  if (obstacle)
    throw new RefreshRefused(
      `"${season.name}" needs a row for a batch, but ${obstacle} holds something. Move it, then try again; nothing was changed.`,
    );
  const changed = rows.flatMap((row, index) => (isSame(row, present[index]) ? [] : [index]));
  const report: SeasonReport = {
    ...changes,
    sheetName: season.name,
    batches: sheets.length,
    written: changed.length + Math.max(0, present.length - rows.length),
    copies: copies(sheets),
    unplugged: unpluggedBatches(unpluggedMarks(), sheets),
  };
  if (report.written === 0) return report;

  context.application.suspendApiCalculationUntilNextSync();
  const { sheet } = season;
  for (const [from, to] of runs(changed)) writeRows(sheet, rows.slice(from, to + 1), firstRow + from, ownWidth);
  const fresh = rows.slice(present.length).flatMap((row, index) => rowCells(row, firstRow + present.length + index));
  writeFormats(sheet, { cells: fresh });
  if (present.length > rows.length) emptyRows(sheet, firstRow + rows.length, firstRow + present.length - 1, ownWidth);
  if (present.length !== rows.length) sheet.pageLayout.setPrintArea(`A1:${printedTo}${firstRow + Math.max(1, rows.length) - 1}`);
  await context.sync();
  return report;
}

function isSame(row: SeasonRow, present: PresentRow | undefined): boolean {
  return (
    present !== undefined &&
    present.settled &&
    row.sheetName === present.sheetName &&
    row.id === present.id &&
    row.lastName === present.lastName &&
    row.left === present.left &&
    row.remark === present.remark &&
    present.own.every((content, index) => content === (row.own[index] ?? ""))
  );
}

function runs(indexes: readonly number[]): [number, number][] {
  const found: [number, number][] = [];
  for (const index of indexes) {
    const last = found.at(-1);
    if (last && last[1] + 1 === index) last[1] = index;
    else found.push([index, index]);
  }
  return found;
}

const ownRange = (from: number, to: number, width: number): string =>
  `${firstOwnColumn}${from}:${address(to, columnNumber(firstOwnColumn) + width - 1)}`;

function writeRows(sheet: Excel.Worksheet, rows: readonly SeasonRow[], from: number, ownWidth: number): void {
  const to = from + rows.length - 1;
  sheet.getRange(`A${from}:${lastColumn}${to}`).formulas = rows.map((row, index) => {
    const contents = rowContents(row, from + index);
    return columns.map(({ letter }) => contents.get(letter) ?? "");
  });
  if (ownWidth === 0) return;
  sheet.getRange(ownRange(from, to, ownWidth)).formulas = rows.map(({ own }, index) =>
    Array.from({ length: ownWidth }, (_, offset) =>
      moved.down(own[offset] ?? "", address(from + index, columnNumber(firstOwnColumn) + offset)),
    ),
  );
}

/** Rows that the list no longer needs: what stood there has moved up, or had nothing of the brewer's. */
function emptyRows(sheet: Excel.Worksheet, from: number, to: number, ownWidth: number): void {
  const ours = sheet.getRange(`A${from}:${lastColumn}${to}`);
  ours.clear("Contents");
  ours.format.fill.clear();
  for (const edge of ["EdgeBottom", "InsideHorizontal"] as const) ours.format.borders.getItem(edge).style = "None";
  if (ownWidth > 0) sheet.getRange(ownRange(from, to, ownWidth)).clear("Contents");
}

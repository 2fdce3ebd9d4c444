import { address, columnNumber, localAddress } from "../../grid/plan/addresses";
import { runsOf } from "../../grid/plan/areas";
import type { NamedCells } from "../../grid/read/named-cells";
import { changeRanges, rangeChange, type Along, type RangeChange } from "../../grid/write/change-ranges";
import { ToldInFull } from "../../grid/words/told-in-full";
import { batchMark, unpluggedMark } from "../../batch/read/batch-sheets";
import { loadBatchMarks, sheetMarks } from "../../batch/read/batch-marks";
import { copies } from "../../batch/read/copied-sheets";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { unpluggedBatches, type UnpluggedBatch } from "../../batch/read/unplugged-batches";
import { writeFormats } from "../../grid/write/write-formats";
import { moved } from "./own-cells";
import { keptContent, rowCells, rowContents } from "./season-cells";
import { columns, firstOwnColumn, keptColumns, lastColumn, printedTo, onSheets, tellingNames } from "./season-columns";
import { mostBatches, newestSeason, planOf, seasonMark, seasonVersion } from "./season-plan";
import { mergeRows, yearOf, type Merged, type PresentRow, type SeasonRow } from "./season-rows";
import { inTheWay, presentList } from "./season-sheet";

/** The season sheet cannot be brought up to date, in words for the brewer; it is as it was. */
export class RefreshRefused extends ToldInFull {
  override readonly name = "RefreshRefused";
}

export interface SeasonReport extends Omit<Merged, "rows"> {
  readonly sheetName: string;
  readonly batches: number;
  /** Rows that were written; 0 when everything was as it should be. */
  readonly written: number;
  /** Rows of which only the kept figures were brought up to date. */
  readonly noted: number;
  /** Years in which something was brewed, the newest first. */
  readonly years: readonly SeasonYear[];
  /** Every batch sheet of the list, in its order. */
  readonly sheets: readonly string[];
  /** Groups of sheets that are copies of one another and still carry one and the same mark. */
  readonly copies: readonly (readonly string[])[];
  /** Sheets that have no row in the list. */
  readonly unplugged: readonly UnpluggedBatch[];
}

/** A year of the list. */
export interface SeasonYear {
  readonly year: number;
  readonly batches: number;
  /** So many of them have their figures closed. */
  readonly closed: number;
}

/** A year of which the figures are closed, or follow the batch sheets again. */
export interface YearChange {
  readonly year: number;
  readonly isClosed: boolean;
}

/**
 * Brings the list of the season sheet up to the batch sheets as they are now; undefined where the workbook has no season
 * sheet. Writes only rows that changed, so a second time it writes nothing. Three `context.sync()` to look, one more to write when there is
 * something to write, whatever the number of batches.
 *
 * @param change a year to close, or to open again, in the same write
 * @throws RefreshRefused when something of the brewer's stands where a new row must go, or the sheet follows an older plan
 */
export function refreshSeason(context: Excel.RequestContext, change?: YearChange): Promise<SeasonReport | undefined> {
  return withSecondLook(() => lookAndRefresh(context, change));
}

async function lookAndRefresh(context: Excel.RequestContext, change?: YearChange): Promise<SeasonReport | undefined> {
  const marks = await sheetMarks(context, [batchMark, unpluggedMark, "batch_id", seasonMark, ...tellingNames]);
  const seasons = marks.filter(({ ranges }) => ranges.has(seasonMark)).map((one) => ({ ...one, loaded: loadSheet(one.sheet) }));
  if (seasons.length === 0) return undefined;
  const areas = seasons.map(({ sheet }) => sheet.pageLayout.getPrintAreaOrNullObject().load("address"));
  const [batchMarks, unpluggedMarks] = [loadBatchMarks(marks), loadBatchMarks(marks, unpluggedMark)];
  await context.sync();

  const { cells, index } = newestSeason(seasons.map(({ loaded }) => namedCells(loaded)));
  const [season, printed] = [seasons[index]!, areas[index]!];
  if (planOf(cells) < seasonVersion)
    throw new OlderSeason(
      `“${season.name}” was made by an older Gylebook, which kept nothing of batches whose sheets are deleted. Write it in today's layout (Season, Season); until then it stays as it is.`,
    );
  const { firstRow, rows: present, ownWidth } = presentList(cells);
  const sheets = batchMarks();
  const { rows: asSeen, ...merged } = mergeRows(present, sheets, onSheets(marks));
  const rows = asSeen.map((row) =>
    change && yearOf(row) === change.year ? { ...row, closed: change.isClosed ? change.year : ("" as const) } : row,
  );
  if (rows.length > mostBatches)
    throw new RefreshRefused(
      `The season sheet has room for ${mostBatches} batches; this workbook has ${rows.length}. Begin a new workbook for the next season; nothing was changed.`,
    );
  const obstacle = inTheWay(cells, firstRow + present.length, firstRow + rows.length - 1, ownWidth);
  if (obstacle)
    throw new RefreshRefused(
      `"${season.name}" needs a row for a batch, but ${obstacle} holds something. Move it, then try again; nothing was changed.`,
    );
  const changed = rows.flatMap((row, place) => (isSame(row, present[place]) ? [] : [place]));
  const noted = rows.flatMap((row, place) => (changed.includes(place) || isKept(row, present[place]) ? [] : [place]));
  const report: SeasonReport = {
    ...merged,
    sheetName: season.name,
    batches: sheets.length,
    written: changed.length + Math.max(0, present.length - rows.length),
    noted: noted.length,
    years: yearsOf(rows),
    sheets: sheets.map(({ sheetName }) => sheetName),
    copies: copies(sheets),
    unplugged: unpluggedBatches(unpluggedMarks(), sheets),
  };
  if (report.written + report.noted === 0) return report;

  const { sheet } = season;
  const changes = [
    ...runsOf(changed).flatMap(([from, to]) => rowChanges(cells, rows.slice(from, to + 1), firstRow + from, ownWidth)),
    ...runsOf(noted).map(([from, to]) => keptChange(cells, rows.slice(from, to + 1), firstRow + from)),
  ];
  if (present.length > rows.length) changes.push(...emptied(cells, firstRow + rows.length, firstRow + present.length - 1, ownWidth));
  await changeRanges(context, changes, {
    place: `“${season.name}”`,
    ...(present.length !== rows.length && { along: lengthened(context, sheet, { present, rows, firstRow }, printed) }),
  });
  return report;
}

/** Made by an older Gylebook, which the pane offers to write anew. */
export class OlderSeason extends RefreshRefused {}

function yearsOf(rows: readonly SeasonRow[]): SeasonYear[] {
  const years = new Map<number, SeasonYear>();
  for (const row of rows) {
    const year = yearOf(row);
    if (year === undefined) continue;
    const { batches, closed } = years.get(year) ?? { batches: 0, closed: 0 };
    years.set(year, { year, batches: batches + 1, closed: closed + (row.closed === "" ? 0 : 1) });
  }
  return [...years.values()].sort((one, other) => other.year - one.year);
}

/** The looks of rows that came or went, and what is printed. */
function lengthened(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  list: { readonly present: readonly PresentRow[]; readonly rows: readonly SeasonRow[]; readonly firstRow: number },
  printed: { readonly isNullObject: boolean; readonly address: string },
): Along {
  const { present, rows, firstRow } = list;
  const [before, after] = [firstRow + present.length, firstRow + rows.length];
  const dress = (some: readonly SeasonRow[], from: number) =>
    writeFormats(sheet, { cells: some.flatMap((row, index) => rowCells(row, from + index)) });
  return {
    write: () => {
      dress(rows.slice(present.length), before);
      if (after < before) undress(sheet.getRange(`A${after}:${lastColumn}${before - 1}`));
      sheet.pageLayout.setPrintArea(`A1:${printedTo}${Math.max(firstRow, after - 1)}`);
    },
    takeBack: async () => {
      if (after > before) sheet.getRange(`A${before}:${lastColumn}${after - 1}`).clear("Formats");
      dress(present.slice(rows.length), after);
      if (!printed.isNullObject) sheet.pageLayout.setPrintArea(localAddress(printed.address));
      await context.sync();
    },
  };
}

function isSame(row: SeasonRow, present: PresentRow | undefined): boolean {
  return (
    present !== undefined &&
    present.settled &&
    row.sheetName === present.sheetName &&
    row.id === present.id &&
    row.lastName === present.lastName &&
    row.closed === present.closed &&
    (row.closed !== "" || (row.kegCell === present.kegCell && row.hasParts === present.hasParts)) &&
    row.left === present.left &&
    row.remark === present.remark &&
    present.own.every((content, index) => content === (row.own[index] ?? ""))
  );
}

const isKept = (row: SeasonRow, present: PresentRow | undefined): boolean =>
  keptColumns.every((_, index) => (row.kept[index] ?? "") === (present?.kept[index] ?? ""));

function keptChange(cells: NamedCells, rows: readonly SeasonRow[], from: number): RangeChange {
  const [first, last] = [keptColumns[0]!.at, keptColumns.at(-1)!.at];
  return rangeChange(
    cells,
    `${first}${from}:${last}${from + rows.length - 1}`,
    rows.map(({ kept }) => keptColumns.map((_, index) => keptContent(kept[index] ?? ""))),
  );
}

const ownRange = (from: number, to: number, width: number): string =>
  `${firstOwnColumn}${from}:${address(to, columnNumber(firstOwnColumn) + width - 1)}`;

function rowChanges(cells: NamedCells, rows: readonly SeasonRow[], from: number, ownWidth: number): RangeChange[] {
  const to = from + rows.length - 1;
  const ours = rows.map((row, index) => {
    const contents = rowContents(row, from + index);
    return columns.map(({ letter }) => contents.get(letter) ?? "");
  });
  const own = rows.map((row, index) =>
    Array.from({ length: ownWidth }, (_, offset) =>
      moved.down(row.own[offset] ?? "", address(from + index, columnNumber(firstOwnColumn) + offset)),
    ),
  );
  return [
    rangeChange(cells, `A${from}:${lastColumn}${to}`, ours),
    ...(ownWidth === 0 ? [] : [rangeChange(cells, ownRange(from, to, ownWidth), own)]),
  ];
}

/** Rows that the list no longer needs: what stood there has moved up, or had nothing of the brewer's. */
function emptied(cells: NamedCells, from: number, to: number, ownWidth: number): RangeChange[] {
  const nothing = (width: number) => Array.from({ length: to - from + 1 }, () => Array.from({ length: width }, () => ""));
  return [
    rangeChange(cells, `A${from}:${lastColumn}${to}`, nothing(columns.length)),
    ...(ownWidth === 0 ? [] : [rangeChange(cells, ownRange(from, to, ownWidth), nothing(ownWidth))]),
  ];
}

function undress(rows: Excel.Range): void {
  rows.format.fill.clear();
  for (const edge of ["EdgeBottom", "InsideHorizontal"] as const) rows.format.borders.getItem(edge).style = "None";
}

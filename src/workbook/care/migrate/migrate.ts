import { planVersion } from "../../batch/describe/plan-version";
import { rectangles } from "../../grid/plan/areas";
import { batchMark } from "../../batch/read/batch-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { writeFormats } from "../../grid/write/write-formats";
import { writeUnlessChanged } from "../../grid/write/write-unless-changed";
import { readOutlook, type ReadSheet, type SheetOutlook } from "./outlook";
import { drawBeside, newChart, takeOldChartAway, type NewChart } from "./new-chart";
import { listed, refreshed, type Refreshed } from "./refresh";
import { takeBack } from "./take-back";

export interface MigratedSheet {
  readonly sheetName: string;
  readonly from: number;
  readonly to: number;
  /** What was added, with its cell: "“Planned on the kit:” (L2)", and how many cells follow today's plan now. */
  readonly added: readonly string[];
  /** What stays as it was, and why, in sentences. */
  readonly stays: readonly string[];
}

export interface MigrationReport {
  readonly migrated: readonly MigratedSheet[];
  /** Batch sheets that were left as they are, and why; those of today's plan are not among them. */
  readonly left: readonly SheetOutlook[];
}

/** Writing failed, and taking it back failed as well: the sheets must be looked at. */
export class HalfMigrated extends Error {
  constructor(work: readonly ReadSheet[], cause: unknown) {
    const names = work.map(({ outlook }) => `"${outlook.sheetName}"`).join(", ");
    super(
      `${names}: some formulas of ours, and empty cells beside the printed part, may have been written, and could not be put back. Your own cells are untouched. Undo in the spreadsheet, then look again.`,
      { cause },
    );
    this.name = "HalfMigrated";
  }
}

export interface Work extends ReadSheet {
  readonly fresh: Refreshed;
  readonly chart: NewChart | { readonly stays: string } | undefined;
}

/**
 * Brings batch sheets that an older Gylebook made to today's plan: cells that it lacks, and today's words, formulas and
 * cautions in the place of its own plan's. What the brewer typed, a formula of the brewer's own too, is not
 * touched. All sheets or none: when the writing fails, what was begun is taken back; only a sheet on which everything stands,
 * its new chart too, is then left as it is. Three `context.sync()`: two to read, one to write, whatever the number of sheets.
 *
 * @param only the sheets to bring along; all older ones if left out
 */
export async function migrateSheets(context: Excel.RequestContext, only?: readonly string[]): Promise<MigrationReport> {
  return withSecondLook(() => lookAndWrite(context, only));
}

async function lookAndWrite(context: Excel.RequestContext, only?: readonly string[]): Promise<MigrationReport> {
  const sheets = (await readOutlook(context)).filter(({ outlook }) => only?.includes(outlook.sheetName) ?? true);
  const work = sheets.filter(({ outlook }) => outlook.state === "older").map(planned);
  const left = sheets.map(({ outlook }) => outlook).filter(({ state }) => state === "newer" || state === "refused");
  if (work.length === 0) return { migrated: [], left };
  const lookedAt = work.flatMap(({ outlook, fresh }) =>
    fresh.cells.map(({ address, was }) => ({ sheetName: outlook.sheetName, range: address, before: [[was]] })),
  );
  try {
    context.application.suspendApiCalculationUntilNextSync();
    for (const one of work) addNames(context, one);
    await writeUnlessChanged(context, lookedAt, () => {
      for (const one of work) write(context, one);
      // Last of all sheets together: a chart that is deleted cannot be brought back.
      for (const { outlook, chart } of work)
        if (isNew(chart)) takeOldChartAway(context.workbook.worksheets.getItem(outlook.sheetName), chart);
    });
  } catch (problem) {
    await takeBack(context, work).catch((second: unknown) => {
      throw new HalfMigrated(work, second);
    });
    throw problem;
  }
  return { migrated: work.map(reported), left };
}

const planned = (sheet: ReadSheet): Work => ({
  ...sheet,
  fresh: refreshed(sheet.cells, sheet.outlook.version),
  chart: newChart(sheet.cells, sheet.chartNames),
});

export const isNew = (chart: Work["chart"]): chart is NewChart => chart !== undefined && "area" in chart;

/** Names come first: if somebody else has just done the same, Excel refuses before a cell is touched. */
function addNames(context: Excel.RequestContext, { outlook, fresh }: Work): void {
  const sheet = context.workbook.worksheets.getItem(outlook.sheetName);
  for (const { name, cell } of fresh.names) sheet.names.add(name, sheet.getRange(cell));
}

/** The version comes after all that it promises, the looks last: they are no part of it. */
function write(context: Excel.RequestContext, { cells, outlook, fresh, chart }: Work): void {
  const sheet = context.workbook.worksheets.getItem(outlook.sheetName);
  for (const { address, content } of fresh.cells) sheet.getRange(address).formulas = [[content]];
  for (const range of fresh.freed) sheet.getRange(range).dataValidation.clear();
  if (isNew(chart)) drawBeside(sheet, chart);
  sheet.getRange(cells.range(batchMark)).values = [[planVersion]];
  // A cell that was empty gets its look; others keep theirs.
  const dressed = fresh.cells.filter(({ was }) => was === "").map(({ mergeTo: _, ...cell }) => cell);
  if (rectangles(dressed.map(({ address }) => address)).length > 0) writeFormats(sheet, { cells: dressed });
}

function reported({ outlook, fresh, chart }: Work): MigratedSheet {
  const changed = fresh.cells.filter(({ was }) => was !== "").length;
  return {
    sheetName: outlook.sheetName,
    from: outlook.version,
    to: planVersion,
    added: [
      ...fresh.names.map(({ label, cell }) => `“${label}” (${cell})`),
      ...(changed > 0 ? [`today's words and formulas in ${changed} cells`] : []),
      ...(isNew(chart) ? [`today's chart in the place of the old one, with its figures (${chart.area})`] : []),
    ],
    stays: [
      ...(fresh.stepsStay === undefined
        ? []
        : [`The steps of the day stay, since ${fresh.stepsStay}: compare them with those of a new batch.`]),
      ...(fresh.kept.length > 0
        ? [`What you wrote over formulas or words of ours stays: ${listed(fresh.kept)}. It does not follow today's rules.`]
        : []),
      ...(chart && !isNew(chart) ? [`Its old chart stays, since ${chart.stays}.`] : []),
    ],
  };
}

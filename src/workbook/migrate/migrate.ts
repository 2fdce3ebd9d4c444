import { planVersion } from "../batch/card";
import { fontName, styles } from "../plan/styles";
import type { CellContent } from "../plan/sheet-plan";
import { batchMark } from "../read/batch-sheets";
import { withSecondLook } from "../second-look";
import { freeCells, type Spot } from "./free-cells";
import { readOutlook, type ReadSheet, type SheetOutlook } from "./outlook";
import { drawBeside, newChart, takeOldChartAway, type NewChart } from "./new-chart";
import { missingSince, type AddedCell } from "./steps";
import { takeBack } from "./take-back";

export interface MigratedSheet {
  readonly sheetName: string;
  readonly from: number;
  readonly to: number;
  /** What was added, with its cell: "a place for the name of its kit (L2)". */
  readonly added: readonly string[];
  /** Why the old chart stays, where today's could not be drawn. */
  readonly chartStays?: string;
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
    super(`${names}: some empty cells beside the printed part may have been filled, and could not be emptied again. Your own cells are untouched. Undo in the spreadsheet, then look again.`, { cause });
    this.name = "HalfMigrated";
  }
}

export interface Work extends ReadSheet {
  readonly additions: readonly (Pick<AddedCell, "name" | "label" | "purpose"> & { readonly spot: Spot; readonly content: CellContent })[];
  readonly chart: NewChart | { readonly stays: string } | undefined;
}

/**
 * Brings batch sheets that an older Gylebook made to today's plan. Cells that hold anything, or have a name, are not
 * touched; the sheets' own results stay the same. All sheets or none: when the writing fails, what was begun is taken
 * back; only a sheet on which everything stands, its new chart too, is then left as it is. Three `context.sync()`: two to read, one to write, whatever the number of sheets.
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
  try {
    for (const one of work) write(context, one);
    // Last of all sheets together: a chart that is deleted cannot be brought back.
    for (const { outlook, chart } of work) if (isNew(chart)) takeOldChartAway(context.workbook.worksheets.getItem(outlook.sheetName), chart);
    await context.sync();
  } catch (problem) {
    await takeBack(context, work).catch((second: unknown) => { throw new HalfMigrated(work, second); });
    throw problem;
  }
  return { migrated: work.map(reported), left };
}

function planned(sheet: ReadSheet): Work {
  const added = missingSince(sheet.outlook.version);
  const spots = freeCells(sheet.cells, added);
  return { ...sheet, additions: added.map((cell, index) => ({ ...cell, content: cell.content(sheet.cells), spot: spots[index]! })), chart: newChart(sheet.cells, sheet.chartNames) };
}

export const isNew = (chart: Work["chart"]): chart is NewChart => chart !== undefined && "area" in chart;

/** Names come first: if somebody else has just done the same, Excel refuses before a cell is touched. The version comes after all that it promises, the looks last: they are no part of it. */
function write(context: Excel.RequestContext, { cells, outlook, additions, chart }: Work): void {
  const sheet = context.workbook.worksheets.getItem(outlook.sheetName);
  for (const { name, spot } of additions) sheet.names.add(name, sheet.getRange(spot.cell));
  for (const { label, spot, content } of additions) {
    sheet.getRange(spot.label).values = [[label]];
    sheet.getRange(spot.cell).values = [[content]];
  }
  if (isNew(chart)) drawBeside(sheet, chart);
  sheet.getRange(cells.range(batchMark)).values = [[planVersion]];
  for (const { spot } of additions) for (const address of [spot.label, spot.cell]) asHint(sheet.getRange(address));
}

function asHint({ format }: Excel.Range): void {
  const { color, size } = styles.hint;
  format.font.name = fontName;
  format.font.size = size;
  format.font.color = color;
  format.font.italic = true;
}

const reported = ({ outlook, additions, chart }: Work): MigratedSheet => ({
  sheetName: outlook.sheetName,
  from: outlook.version,
  to: planVersion,
  added: [...additions.map(({ purpose, spot }) => `${purpose} (${spot.cell})`), ...(isNew(chart) ? [`today's chart in the place of the old one, with its figures (${chart.area})`] : [])],
  ...(chart && !isNew(chart) && { chartStays: chart.stays }),
});

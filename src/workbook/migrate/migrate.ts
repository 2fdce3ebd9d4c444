import { planVersion } from "../batch/card";
import { fontName, styles } from "../plan/styles";
import { batchMark } from "../read/batch-sheets";
import { freeCells, type Spot } from "./free-cells";
import { readOutlook, type ReadSheet, type SheetOutlook } from "./outlook";
import { missingSince, type AddedCell } from "./steps";

export interface MigratedSheet {
  readonly sheetName: string;
  readonly from: number;
  readonly to: number;
  /** What was added, with its cell: "a place for the name of its kit (L2)". */
  readonly added: readonly string[];
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

interface Work extends ReadSheet {
  readonly additions: readonly (AddedCell & { readonly spot: Spot })[];
}

/**
 * Brings batch sheets that an older Gylebook made to today's plan. Cells that hold anything, or have a name, are not
 * touched; the sheets' own results stay the same. All sheets or none: when the writing fails, what was begun is taken
 * back. Three `context.sync()`: two to read, one to write, whatever the number of sheets.
 *
 * @param only the sheets to bring along; all older ones if left out
 */
export async function migrateSheets(context: Excel.RequestContext, only?: readonly string[]): Promise<MigrationReport> {
  const sheets = (await readOutlook(context)).filter(({ outlook }) => only?.includes(outlook.sheetName) ?? true);
  const work = sheets.filter(({ outlook }) => outlook.state === "older").map(planned);
  const left = sheets.map(({ outlook }) => outlook).filter(({ state }) => state === "newer" || state === "refused");
  if (work.length === 0) return { migrated: [], left };
  try {
    for (const one of work) write(context, one);
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
  return { ...sheet, additions: added.map((cell, index) => ({ ...cell, spot: spots[index]! })) };
}

/** The version comes after all that it promises, the looks last: they are no part of it. */
function write(context: Excel.RequestContext, { cells, outlook, additions }: Work): void {
  const sheet = context.workbook.worksheets.getItem(outlook.sheetName);
  for (const { name, label, spot, content } of additions) {
    sheet.getRange(spot.label).values = [[label]];
    sheet.getRange(spot.cell).values = [[content(cells)]];
    sheet.names.add(name, sheet.getRange(spot.cell));
  }
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

/** Excel carries out what stands before the failing step. The cells were empty, so emptying them is how they were. */
async function takeBack(context: Excel.RequestContext, work: readonly Work[]): Promise<void> {
  const begun = work.map((one) => {
    const sheet = context.workbook.worksheets.getItem(one.outlook.sheetName);
    return { ...one, sheet, names: one.additions.map(({ name }) => sheet.names.getItemOrNullObject(name)) };
  });
  await context.sync();
  for (const { sheet, names, additions, cells, outlook } of begun) {
    for (const name of names) if (!name.isNullObject) name.delete();
    for (const { spot } of additions) for (const address of [spot.label, spot.cell]) sheet.getRange(address).clear("Contents");
    sheet.getRange(cells.range(batchMark)).values = [[outlook.version]];
  }
  await context.sync();
}

const reported = ({ outlook, additions }: Work): MigratedSheet => ({
  sheetName: outlook.sheetName,
  from: outlook.version,
  to: planVersion,
  added: additions.map(({ purpose, spot }) => `${purpose} (${spot.cell})`),
});

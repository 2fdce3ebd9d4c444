import { sheetNameProblem } from "../words/sheet-name";
import { shortened } from "../words/shortened";
import { ToldInFull } from "../words/told-in-full";
import type { SheetPlan } from "../plan/sheet-plan";
import { isClash, withSecondLook } from "../read/second-look";
import { askFunctions, needFunctions } from "./known-functions";
import { isWritten } from "./same-content";
import { contentMatrix, extentOf, writeSheet } from "./write-sheet";
import { writeSurely, type Standing } from "./write-surely";
import { askMark, newMark, putMark, takeMark } from "./writing-mark";

/** A sheet that cannot be inserted as asked, in words for the brewer. The workbook is as it was. */
export class InsertionRefused extends ToldInFull {
  constructor(
    message: string,
    /** A name that is free, where the one asked for is taken. */
    readonly freeName?: string,
  ) {
    super(message);
    this.name = "InsertionRefused";
  }
}

/**
 * Puts a planned sheet into the workbook: all of it or nothing. It never touches a sheet that is already there, and needs two
 * `context.sync()` (one to look, one to write). Where somebody else was quicker, it looks again. The sheet has its name from the
 * first: in Excel for Windows and Mac renaming a sheet would end what the brewer can undo.
 *
 * @param selected the cell that is in front afterwards; "behind" leaves in front what is there now
 * @param stays "for a moment": the sheet keeps its mark, so that it is known for nobody's should it not be deleted
 * @throws InsertionRefused when the name is taken or not allowed; FunctionsUnknown, with nothing left of the sheet; otherwise as `writeSurely`
 */
export async function insertSheet(
  context: Excel.RequestContext,
  plan: SheetPlan,
  selected: string,
  stays: "for good" | "for a moment" = "for good",
): Promise<void> {
  const problem = sheetNameProblem(plan.sheetName);
  if (problem) throw new InsertionRefused(problem);
  await withSecondLook(() => lookAndWrite(context, plan, selected, stays));
}

async function lookAndWrite(
  context: Excel.RequestContext,
  plan: SheetPlan,
  selected: string,
  stays: "for good" | "for a moment",
): Promise<void> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  const tables = context.workbook.tables;
  tables.load("items/name");
  const front = sheets.getActiveWorksheet().load("name");
  await context.sync();

  refuseTaken(
    sheets.items.map(({ name }) => name),
    plan.sheetName,
  );
  const mark = newMark();
  await writeSurely({
    place: `“${plan.sheetName}”`,
    write: async () => {
      const sheet = sheets.add(plan.sheetName);
      putMark(sheet, mark);
      const refuseUnknown = needFunctions(plan.cells.map(({ content }) => content)) ? askFunctions(sheet.getRange("A1")) : undefined;
      context.application.suspendApiCalculationUntilNextSync();
      writeSheet(sheet, plan, freeTableEnding(tables.items.map(({ name }) => name)));
      if (selected !== "behind") {
        sheet.activate();
        sheet.getRange(selected).select();
      }
      if (stays === "for good") takeMark(sheet);
      await context.sync();
      refuseUnknown?.();
    },
    look: async (problem) => {
      const standing = await standingOf(context, plan, mark);
      // Refused for its name: what stands there in full is somebody else's, and may be the very same.
      return standing === "everything" && isClash(problem) ? "nothing" : standing;
    },
    takeBack: async () => {
      if ((await standingOf(context, plan, mark)) === "nothing") return;
      sheets.getItem(plan.sheetName).delete();
      if (selected !== "behind") sheets.getItem(front.name).activate();
      await context.sync();
    },
  });
}

/** A sheet of the name that is neither marked by us nor as planned is somebody else's, who was quicker. */
async function standingOf(context: Excel.RequestContext, plan: SheetPlan, mark: string): Promise<Standing> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(plan.sheetName);
  await context.sync();
  if (sheet.isNullObject) return "nothing";
  const markNow = askMark(sheet);
  const { lastRow, lastColumn } = extentOf(plan);
  const cells = sheet.getRangeByIndexes(0, 0, lastRow, lastColumn).load("formulas");
  await context.sync();
  const found = markNow();
  if (found !== undefined) return found === mark ? "half" : "nothing";
  const planned = contentMatrix(plan.cells, { from: { row: 1, column: 1 }, to: { row: lastRow, column: lastColumn } });
  return isWritten(planned, cells.formulas) ? "everything" : "nothing";
}

const isTaken = (names: readonly string[], wanted: string): boolean => names.some((name) => name.toLowerCase() === wanted.toLowerCase());

/** @throws InsertionRefused, with a name that is free, when a sheet has the one wanted */
export function refuseTaken(names: readonly string[], wanted: string): void {
  if (!isTaken(names, wanted)) return;
  const free = freeName(names, wanted);
  throw new InsertionRefused(`There is a sheet "${wanted}" already. Use "${free}" instead?`, free);
}

/** "Batch 7" → "Batch 7 (2)": the first one that no sheet has, within Excel's 31 characters. */
export function freeName(names: readonly string[], wanted: string): string {
  if (!isTaken(names, wanted)) return wanted;
  for (let number = 2; ; number += 1) {
    const candidate = shortened(wanted, ` (${number})`);
    if (!isTaken(names, candidate)) return candidate;
  }
}

/** Table names are shared by the whole workbook: "Malt_1", "Malt_2"… */
function freeTableEnding(names: readonly string[]): string {
  const taken = new Set(names.map((name) => name.slice(name.lastIndexOf("_") + 1)));
  for (let number = 1; ; number += 1) if (!taken.has(String(number))) return String(number);
}
